/**
 * What leaves the app and what comes back, as plain functions on an open case. Everything behind them is loaded when it
 * is first asked for: nothing of it is in the page at start. Refusals are values with a sentence for the screen.
 */
import type { Fact } from '../domain/case/facts.ts';
import type { Summary } from '../domain/summary/types.ts';
import type { Arrival } from '../handoff/case-import.ts';
import type { CaseFile, Outcome } from '../handoff/case-file.types.ts';
import type { Paper } from '../handoff/pdf.ts';
import type { OpenCase } from './open-case.ts';

/** What making a file needs of its surroundings. */
export interface HandoffHost {
  now(): number;
  /** This machine's name in case files: a–z, 0–9 and "-", the same for as long as it writes to a case. */
  readonly writer: string;
  /** IANA name; times on paper are in this zone. */
  readonly timeZone: string;
  /** Reads one of the app's own files. */
  read(url: URL): Promise<Uint8Array>;
}

export interface MadeFile {
  readonly name: string;
  readonly type: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** SHA-256 of the case it was made from, lower-case hex. */
  readonly digest: string;
}

/** Fetches one of the app's own files, in the browser. */
export async function fetchOwn(url: URL): Promise<Uint8Array> {
  const answer = await fetch(url);
  if (!answer.ok) throw new Error(`${url.pathname} could not be read: ${answer.status}`);
  return new Uint8Array(await answer.arrayBuffer());
}

const factsOf = (open: OpenCase): readonly Fact[] => open.session.view().log.facts;

function summaryOf(open: OpenCase, now: number): Summary {
  const { summary } = open.parts(now);
  if (summary === undefined) throw new Error('An open case always has a summary.');
  return summary;
}

const failed = (text: string): Outcome<never> => ({ ok: false, reason: 'malformed', where: '', text });

function fileName(summary: Summary, kind: string, ending: string): string {
  const plain = summary.caseCode.replaceAll(/[^A-Za-z0-9_-]+/g, '-').slice(0, 60);
  const visit = summary.visitName.replaceAll(/[^a-z0-9]+/g, '-');
  return `${kind}-${plain === '' ? 'unnamed' : plain}-${visit}.${ending}`;
}

const bytesOf = (text: string): Uint8Array<ArrayBuffer> => new TextEncoder().encode(text);

async function caseFileOf(open: OpenCase, host: HandoffHost): Promise<Outcome<CaseFile>> {
  const { toCaseFile } = await import('../handoff/case-file.ts');
  return toCaseFile(factsOf(open), host.writer);
}

async function sheetOf(open: OpenCase, host: HandoffHost, digest: string) {
  const [{ sheetModel }, { sheetTimes }] = await Promise.all([
    import('../handoff/sheet-model.ts'),
    import('../handoff/sheet-times.ts'),
  ]);
  return sheetModel(summaryOf(open, host.now()), sheetTimes(host.timeZone), digest);
}

/** The lab sheet as a PDF, with the digest of the case as it stands now. */
export async function makePdf(open: OpenCase, paper: Paper, host: HandoffHost): Promise<Outcome<MadeFile>> {
  const file = await caseFileOf(open, host);
  if (!file.ok) return file;
  const { digest } = file.value;
  const [{ sheetPdf }, { loadFonts }] = await Promise.all([
    import('../handoff/pdf.ts'),
    import('../handoff/font-files.ts'),
  ]);
  const fonts = await loadFonts((url) => host.read(url)).catch(() => undefined);
  if (fonts === undefined)
    return failed('The letters of the sheet could not be loaded; no PDF was made. Print the page instead.');
  const made = await sheetPdf(await sheetOf(open, host, digest), { paper, fonts, madeAt: host.now() });
  const name = fileName(summaryOf(open, host.now()), 'lab-sheet', 'pdf');
  return { ok: true, value: { name, type: 'application/pdf', bytes: new Uint8Array(made), digest } };
}

/** The case as a file for another machine; under a passphrase when one is given. */
export async function makeCaseFile(open: OpenCase, host: HandoffHost, passphrase?: string): Promise<Outcome<MadeFile>> {
  const file = await caseFileOf(open, host);
  if (!file.ok) return file;
  const { caseText } = await import('../handoff/chain.ts');
  const plain = caseText(file.value);
  const sealed = passphrase === undefined ? undefined : await import('../handoff/sealed.ts');
  const text = sealed === undefined ? { ok: true as const, value: plain } : await sealed.seal(plain, passphrase ?? '');
  if (!text.ok) return text;
  const name = fileName(summaryOf(open, host.now()), 'case', 'json');
  return { ok: true, value: { name, type: 'application/json', bytes: bytesOf(text.value), digest: file.value.digest } };
}

/** The case as a FHIR R4 document bundle, with the PDF inside when one is given. */
export async function makeFhir(open: OpenCase, host: HandoffHost, pdf?: Uint8Array): Promise<Outcome<MadeFile>> {
  const file = await caseFileOf(open, host);
  if (!file.ok) return file;
  const { digest } = file.value;
  const [{ fhirBundle }, { readingRows }, { readingDefs }] = await Promise.all([
    import('../handoff/fhir.ts'),
    import('../domain/summary/rows.ts'),
    import('../domain/protocol/readings.ts'),
  ]);
  const view = open.session.view();
  const bundle = await fhirBundle({
    summary: summaryOf(open, host.now()),
    view,
    rows: readingRows(view, readingDefs),
    sheet: await sheetOf(open, host, digest),
    madeAt: host.now(),
    digest,
    ...(pdf === undefined ? {} : { pdf }),
  });
  if (!bundle.ok) return bundle;
  const name = fileName(summaryOf(open, host.now()), 'fhir', 'json');
  const text = `${JSON.stringify(bundle.value, null, 1)}\n`;
  return { ok: true, value: { name, type: 'application/fhir+json', bytes: bytesOf(text), digest } };
}

/** The digest as text and as a QR code, for the sheet on the screen. */
export async function caseCode(
  open: OpenCase,
  host: HandoffHost,
): Promise<Outcome<{ readonly value: string; readonly path: string; readonly size: number }>> {
  const digest = await digestNow(open, host);
  if (!digest.ok) return digest;
  const { codePath } = await import('../handoff/code-path.ts');
  return { ok: true, value: { value: digest.value, ...codePath(digest.value) } };
}

/** A case file as read from disk: whole, unchanged and opened, or refused with the place named. */
export async function readCaseFile(text: string, passphrase?: string): Promise<Outcome<CaseFile>> {
  const { readCaseText } = await import('../handoff/case-file.ts');
  const { isSavedRecord, readSavedRecord } = await import('../handoff/saved-record.ts');
  if (isSavedRecord(text)) return readSavedRecord(text);
  if (!text.includes('rimwise-case-sealed')) return readCaseText(text);
  const { isSealed, unseal } = await import('../handoff/sealed.ts');
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return readCaseText(text);
  }
  if (!isSealed(json)) return readCaseText(text);
  if (passphrase === undefined)
    return { ok: false, reason: 'locked', where: '', text: 'This case file is under a passphrase.' };
  const plain = await unseal(json, passphrase);
  return plain.ok ? readCaseText(plain.value) : plain;
}

/**
 * What a file brings to a case: facts to append behind those that are here (`[]` for a case that is not here yet).
 * Nothing that is here is changed.
 */
export async function arriving(here: readonly Fact[], file: CaseFile, writer: string): Promise<Outcome<Arrival>> {
  const { arrivalOf } = await import('../handoff/case-import.ts');
  return arrivalOf(here, file, writer);
}

/** The digest of the case as it stands, for the screen and for print by the browser. */
export async function digestNow(open: OpenCase, host: HandoffHost): Promise<Outcome<string>> {
  const file = await caseFileOf(open, host);
  return file.ok ? { ok: true, value: file.value.digest } : file;
}
