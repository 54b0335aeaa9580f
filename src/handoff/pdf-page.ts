/** The paper: sizes, letters and the few ways in which text is set. Everything is tagged; nothing is coloured. */
import type PDFDocument from 'pdfkit';
import { legible } from './glyphs.ts';

export type Doc = InstanceType<typeof PDFDocument>;
export type Node = PDFKit.PDFStructureElement;

export const MARGIN = 36;
/** Room for the running foot, inside the lower margin. */
export const FOOT = 14;

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Page {
  readonly doc: Doc;
  readonly root: Node;
  /** Size of running text in points. */
  readonly size: number;
}

export const left = (doc: Doc) => doc.page.margins.left;
export const width = (doc: Doc) => doc.page.width - doc.page.margins.left - doc.page.margins.right;
const bottom = (doc: Doc) => doc.page.height - doc.page.margins.bottom;

/** Begins a new page when less than `height` is left on this one. */
export function keepTogether(doc: Doc, height: number): void {
  if (doc.y + height > bottom(doc)) doc.addPage();
}

export const strong = (doc: Doc, size: number) => doc.font('bold').fontSize(size);
export const plain = (doc: Doc, size: number) => doc.font('regular').fontSize(size);

export interface TextAt {
  readonly x?: number;
  readonly width?: number;
  readonly tag?: string;
}

/** One paragraph below what has been set so far. */
export function paragraph({ doc, root }: Page, text: string, at: TextAt = {}): void {
  const x = at.x ?? left(doc);
  const room = at.width ?? width(doc);
  doc.text(legible(text), x, doc.y, { width: room, structParent: root, structType: at.tag ?? 'P' });
  doc.x = left(doc);
}

/** A heading that is never left alone at the foot of a page: `below` is what must stand under it. */
export function heading(page: Page, title: string, below: number): void {
  const { doc, size } = page;
  keepTogether(doc, size * 2.6 + below);
  doc.y += size * 0.7;
  strong(doc, size * 1.2);
  paragraph(page, title, { tag: 'H2' });
  const y = doc.y + 0.5;
  doc.markContent('Artifact', { type: 'Layout' });
  doc
    .save()
    .lineWidth(0.7)
    .moveTo(left(doc), y)
    .lineTo(left(doc) + width(doc), y)
    .stroke()
    .restore();
  doc.endMarkedContent();
  doc.y = y + size * 0.3;
  plain(doc, size);
}

/** A drawing with its sentence and its place; the library's types do not know `bbox` yet. */
export function figure(page: Page, alt: string, { box, draw }: { readonly box: Box; readonly draw: () => void }): void {
  const bbox = [box.x, box.y, box.x + box.width, box.y + box.height];
  const options: PDFKit.Mixins.StructureElementOptions & { readonly bbox: readonly number[] } = {
    alt: legible(alt),
    bbox,
  };
  page.root.add(page.doc.struct('Figure', options, draw));
}
