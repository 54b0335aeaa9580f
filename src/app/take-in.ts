/** A case file taken in: verified, merged into the case that is here, appended behind it. Nothing that is here is changed. */
import type { Fact } from '../domain/case/facts.ts';
import { MOST_FILE_BYTES } from '../domain/case/fileSize.ts';
import { isKind } from '../domain/case/fold.ts';
import { parseFacts } from '../domain/case/parse.ts';
import type { Arrival } from '../handoff/case-import.ts';
import type { CaseFile, Outcome, Refused } from '../handoff/case-file.types.ts';
import type { FilesParts } from './files.ts';
import { arriving, readCaseFile } from './handoff.ts';
import type { OpenCase } from './open-case.ts';
import { writerOf } from './papers.ts';

/** `brought`: the case it belongs to, and whether anything of it was new. */
export type TakenIn =
  | { readonly ok: true; readonly id: string; readonly fresh: number; readonly lines: readonly string[] }
  | { readonly ok: false; readonly locked: boolean; readonly text: string };

const no = (text: string): TakenIn => ({ ok: false, locked: false, text });
const NOTHING_TAKEN = 'Nothing was taken in.';

/** The sentence of a refusal, with the place where the sentence does not name it. */
export function refusalText({ text, where }: Refused): string {
  return where === '' || text.includes(where) ? text : `${text} (at ${where})`;
}

const entries = (count: number): string => `${count} ${count === 1 ? 'entry' : 'entries'}`;

function broughtText(code: string, { facts }: Arrival, all: number): string {
  const here = all - facts.length;
  if (here === 0) return `New case ${code}: ${entries(all)}.`;
  if (facts.length === 0) return `Case ${code}: nothing new, all ${entries(all)} already here.`;
  return `Case ${code}: ${facts.length} new ${facts.length === 1 ? 'entry' : 'entries'}, ${here} already here.`;
}

/** What the file said first, for whoever did not see it being written. */
function newsOf(facts: readonly Fact[], all: readonly Fact[]): readonly string[] {
  const taken = new Set(all.flatMap((fact) => (isKind(fact, 'undone') ? [fact.body.act] : [])));
  const live = facts.filter((fact) => !taken.has(fact.act));
  const ticks = live.filter((fact) => isKind(fact, 'benchDone')).length;
  return [
    ...(ticks === 0 ? [] : [`The laboratory has done ${ticks === 1 ? '1 line' : `${ticks} lines`} of the order.`]),
    ...live.flatMap(({ body }) => {
      if (body.kind === 'benchQuestion') return [`The laboratory asks: ${body.text}`];
      if (body.kind === 'benchAnswer') return [`The clinic answers: ${body.text}`];
      if (body.kind === 'workReturned') return [`Work returned${body.text === '' ? '.' : `: ${body.text}`}`];
      return [];
    }),
  ];
}

/** Facts of the case as they are on this device; none for a case that is not here. */
async function factsHere(id: string, { devices }: FilesParts): Promise<Outcome<readonly Fact[]>> {
  const loaded = await devices.log.open(id);
  if (!loaded.ok && loaded.reason === 'unknownCase') return { ok: true, value: [] };
  const damaged = (text: string): Refused => ({ ok: false, reason: 'malformed', where: '', text });
  if (!loaded.ok) return damaged(`The same case on this device cannot be read: ${loaded.why} ${NOTHING_TAKEN}`);
  const parsed = parseFacts(loaded.facts);
  if (!parsed.ok) return damaged(`Entry ${parsed.at} of the same case on this device cannot be read. ${NOTHING_TAKEN}`);
  return { ok: true, value: parsed.facts };
}

const ELSEWHERE = 'This case is being written in another window. Close it there and take the file in again.';

/** The right to write the case: held anyway when it is the open one, otherwise for as long as it takes. */
async function withRight(id: string, parts: FilesParts, work: () => Promise<TakenIn>): Promise<TakenIn> {
  const { writer } = parts.keeping;
  if (parts.open()?.id === id) return writer.state() === 'here' ? work() : no(ELSEWHERE);
  let taken = no(ELSEWHERE);
  await writer.briefly(id, async () => {
    taken = await work();
  });
  return taken;
}

/** A number that waits would be lost when the case is read again. */
function waits(open: OpenCase | undefined, id: string): boolean {
  return open?.id === id && open.session.context().pending !== undefined;
}

async function merge(file: CaseFile, parts: FilesParts): Promise<TakenIn> {
  const here = await factsHere(file.caseId, parts);
  if (!here.ok) return no(here.text);
  const arrival = await arriving(here.value, file, await writerOf(parts.devices));
  if (!arrival.ok) return no(`${refusalText(arrival)} ${NOTHING_TAKEN}`);
  const { facts } = arrival.value;
  const all = [...here.value, ...facts];
  const opened = await parts.opened(file.caseId, all);
  if (!opened.ok) return no(`${opened.text} ${NOTHING_TAKEN}`);
  const code = opened.open.row().code;
  const brought = broughtText(code, arrival.value, file.entries.length);
  const kept = await parts.keeping.keep(facts, brought, opened.open);
  if (!kept) return no(parts.trouble());
  return { ok: true, id: file.caseId, fresh: facts.length, lines: [brought, ...newsOf(facts, all)] };
}

function textOf(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

/** Takes a case file in, or says in a sentence why not. Nothing is taken in part. */
export async function takeIn(bytes: Uint8Array, parts: FilesParts, passphrase?: string): Promise<TakenIn> {
  if (bytes.length > MOST_FILE_BYTES) return no('This file is larger than 20 MB and was not read: it is no case file.');
  const text = textOf(bytes);
  if (text === undefined) return no('This file is not text: it is no case file.');
  const file = await readCaseFile(text, passphrase);
  if (!file.ok) {
    const locked = file.reason === 'locked' || file.reason === 'wrongPassphrase';
    return { ok: false, locked, text: refusalText(file) };
  }
  const { caseId } = file.value;
  if (waits(parts.open(), caseId)) return no('A number waits for its yes in this case. Answer it first.');
  const taken = await withRight(caseId, parts, () => merge(file.value, parts));
  if (taken.ok && taken.fresh > 0) await parts.readAnew(caseId);
  return taken;
}
