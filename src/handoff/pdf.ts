/**
 * The lab sheet as a tagged PDF, in the browser and headless. Loaded only when a PDF is asked for. Text is real text in
 * embedded fonts; headings, lists, tables and figures are tagged; nothing depends on colour.
 */
import Pdf from 'pdfkit';
import { legible } from './glyphs.ts';
import { section } from './pdf-blocks.ts';
import { drawCode } from './pdf-drawings.ts';
import {
  figure,
  FOOT,
  keepTogether,
  left,
  MARGIN,
  paragraph,
  plain,
  strong,
  width,
  type Doc,
  type Page,
} from './pdf-page.ts';
import type { SheetModel } from './sheet-model.types.ts';

export type Paper = 'A4' | 'LETTER';

/** TrueType files; see fonts/. */
export interface SheetFonts {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

export interface PdfOptions {
  readonly paper: Paper;
  readonly fonts: SheetFonts;
  /** When it was made, ms since 1970; the same sheet, paper and time give the same bytes. */
  readonly madeAt: number;
}

/** Tried in turn until the sheet fits on two pages; below the last one it may take more, for nothing is left out. */
const SIZES: readonly number[] = [9.2, 8.6, 8, 7.4];
const PAGES = 2;

/** Title and author stand in the file's metadata as XML, unescaped by the library. */
const plainTitle = (text: string) => legible(text).replaceAll(/[<>&"]/g, ' ');

function open(sheet: SheetModel, { paper, fonts, madeAt }: PdfOptions): Doc {
  const doc = new Pdf({
    size: paper,
    margins: { top: MARGIN, bottom: MARGIN + FOOT, left: MARGIN, right: MARGIN },
    bufferPages: true,
    // Without a first font the library reaches for one of its own, which the browser's build does not have.
    font: fonts.regular as unknown as string,
    pdfVersion: '1.7',
    tagged: true,
    lang: 'en-GB',
    displayTitle: true,
    info: { Title: plainTitle(sheet.title), CreationDate: new Date(madeAt), Producer: 'Rimwise', Creator: 'Rimwise' },
  });
  doc.registerFont('regular', fonts.regular);
  doc.registerFont('bold', fonts.bold);
  return doc;
}

function top(page: Page, sheet: SheetModel): void {
  const { doc, size } = page;
  strong(doc, size * 1.8);
  paragraph(page, `${sheet.title}${sheet.mark === '' ? '' : ` (${sheet.mark})`}`, { tag: 'H1' });
  plain(doc, size);
  for (const { label, value } of sheet.head.slice(0, 2)) paragraph(page, `${label}: ${value}`);
  paragraph(
    page,
    sheet.head
      .slice(2)
      .map(({ label, value }) => `${label}: ${value}`)
      .join('   '),
  );
}

const CODE = 74;

/** The digest as text and as a QR code, side by side, with the white edge a reader needs; the foot of the sheet beside it. */
function digestPart(page: Page, digest: string, foot: readonly string[]): void {
  const { doc, size } = page;
  keepTogether(doc, CODE + size);
  const box = { x: left(doc) + 8, y: doc.y + size, width: CODE - 8, height: CODE - 8 };
  figure(page, 'QR code of the case digest', { box, draw: () => drawCode(doc, digest, box) });
  const at = { x: left(doc) + CODE + 18, width: width(doc) - CODE - 18 };
  doc.y = box.y;
  strong(doc, size * 1.2);
  paragraph(page, 'Case digest', { ...at, tag: 'H2' });
  plain(doc, size);
  paragraph(
    page,
    'SHA-256 of the case as it was handed over. A case file with another digest is another case file.',
    at,
  );
  paragraph(page, digest, at);
  doc.y += size * 0.7;
  for (const line of foot) paragraph(page, line, at);
  doc.y = Math.max(doc.y, box.y + box.height);
}

function running(doc: Doc, sheet: SheetModel): void {
  const { start, count } = doc.bufferedPageRange();
  for (let i = start; i < start + count; i += 1) {
    doc.switchToPage(i);
    const { bottom } = doc.page.margins;
    doc.page.margins.bottom = 0;
    doc.markContent('Artifact', { type: 'Pagination' });
    plain(doc, 7);
    const digest = sheet.digest === undefined ? '' : `   digest ${sheet.digest.slice(0, 12)}…`;
    const text = legible(`${sheet.title}   page ${i + 1} of ${count}${digest}`);
    doc.text(text, left(doc), doc.page.height - MARGIN - 4, { lineBreak: false });
    doc.endMarkedContent();
    doc.page.margins.bottom = bottom;
  }
}

function lay(sheet: SheetModel, options: PdfOptions, size: number): Doc {
  const doc = open(sheet, options);
  const root = doc.struct('Document');
  doc.addStructure(root);
  const page: Page = { doc, root, size };
  top(page, sheet);
  for (const one of sheet.sections) section(page, one);
  if (sheet.digest === undefined) {
    doc.y += size;
    for (const line of sheet.foot) paragraph(page, line);
  } else digestPart(page, sheet.digest, sheet.foot);
  root.end();
  return doc;
}

function bytesOf(doc: Doc): Promise<Uint8Array> {
  return new Promise((done, failed) => {
    const parts: Uint8Array[] = [];
    doc.on('data', (part: Uint8Array) => parts.push(part));
    doc.on('error', failed);
    doc.on('end', () => {
      const bytes = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
      let at = 0;
      for (const part of parts) {
        bytes.set(part, at);
        at += part.length;
      }
      done(bytes);
    });
    doc.end();
  });
}

/** The whole sheet; two pages unless that would make the letters too small to read, and then as many as it needs. */
export function sheetPdf(sheet: SheetModel, options: PdfOptions): Promise<Uint8Array> {
  const fits = (doc: Doc) => doc.bufferedPageRange().count <= PAGES;
  let doc = lay(sheet, options, SIZES[0] ?? 9);
  for (const size of SIZES.slice(1)) {
    if (fits(doc)) break;
    doc = lay(sheet, options, size);
  }
  running(doc, sheet);
  return bytesOf(doc);
}
