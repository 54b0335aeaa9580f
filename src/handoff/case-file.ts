/** Making, reading and merging case files. Nothing here throws: every refusal has a name, a place and a sentence. */
import * as v from 'valibot';
import type { Fact } from '../domain/case/facts.ts';
import { MOST_FILE_BYTES } from '../domain/case/fileSize.ts';
import { parseFacts } from '../domain/case/parse.ts';
import { readJson } from '../domain/case/plainJson.ts';
import { caseFileSchema } from './case-file-schema.ts';
import type { CaseFile, CaseFileFailure, Entry, Outcome, PortableFact, Ref, Refused } from './case-file.types.ts';
import { chainsOf, digestOf, entryHash } from './chain.ts';
import { originOf, WRITER, withOrigin } from './origin.ts';
import { readingOrder } from './reading-order.ts';
import { bodyIn, bodyOut, Dangling } from './refs.ts';

export const refuse = (reason: CaseFileFailure, where: string, text: string): Refused => ({
  ok: false,
  reason,
  where,
  text,
});

const name = ({ writer, n }: Ref) => `${writer}/${n}`;

interface Draft {
  readonly ref: Ref;
  readonly at: number;
  readonly fact: PortableFact;
}

/** The entry each fact is: its own chain's next one, or the one it arrived as. */
function refsBySeq(facts: readonly Fact[], writer: string): readonly Ref[] {
  let own = 0;
  return facts.map((fact) => originOf(fact.app).from ?? { writer, n: (own += 1) });
}

function drafts(facts: readonly Fact[], refs: readonly Ref[]): readonly Draft[] {
  const out = (seq: number): Ref => {
    const ref = refs[seq - 1];
    if (ref === undefined) throw new Dangling(`entry ${seq}`);
    return ref;
  };
  return facts.map((fact, i) => ({
    ref: refs[i] ?? { writer: '', n: 0 },
    at: fact.at,
    fact: {
      v: 1,
      act: out(fact.act),
      protocol: fact.protocol,
      app: originOf(fact.app).app,
      body: bodyOut(fact.body as unknown as Readonly<Record<string, unknown>>, out),
    },
  }));
}

async function chained(caseId: string, made: readonly Draft[]): Promise<Outcome<readonly Entry[]>> {
  const heads = new Map<string, { n: number; hash: string }>();
  const entries: Entry[] = [];
  for (const { ref, at, fact } of made.toSorted((a, b) => a.ref.n - b.ref.n)) {
    const head = heads.get(ref.writer) ?? { n: 0, hash: '' };
    if (ref.n === head.n) return refuse('forked', name(ref), `Two entries of this case are numbered ${name(ref)}.`);
    if (ref.n !== head.n + 1) return refuse('cut', name(ref), `Entries before ${name(ref)} are missing in this case.`);
    const open = { ...ref, at, fact, prev: head.hash };
    // One after the other: each hash holds the one before it.
    // oxlint-disable-next-line no-await-in-loop
    const hash = await entryHash(caseId, open);
    heads.set(ref.writer, { n: ref.n, hash });
    entries.push({ ...open, hash });
  }
  return { ok: true, value: entries };
}

const stuckAt = (entry: Entry) =>
  refuse('dangling', name(entry), `Entry ${name(entry)} refers to an entry that is not there.`);

async function assembled(caseId: string, entries: readonly Entry[]): Promise<Outcome<CaseFile>> {
  const ordered = readingOrder(entries);
  if (!ordered.ok) return stuckAt(ordered.stuck);
  const { order } = ordered;
  const digest = await digestOf(caseId, order);
  return { ok: true, value: { format: 'rimwise-case', v: 1, caseId, entries: order, digest } };
}

/**
 * The stored facts of one case as a file. `writer` names this machine; it must stay the same for as long as the machine
 * writes to the case. Refuses `malformed` for a writer's name or a fact that cannot travel, `dangling` for a reference to
 * a missing fact, `cut` or `forked` when arrived entries are not whole.
 */
export async function toCaseFile(facts: readonly Fact[], writer: string): Promise<Outcome<CaseFile>> {
  const caseId = facts[0]?.caseId;
  if (caseId === undefined) return refuse('malformed', '', 'A case without entries cannot be handed over.');
  if (!WRITER.test(writer))
    return refuse('malformed', 'writer', 'A writer is named by a–z, 0–9 and “-”, at most 40 letters.');
  try {
    const entries = await chained(caseId, drafts(facts, refsBySeq(facts, writer)));
    return entries.ok ? await assembled(caseId, entries.value) : entries;
  } catch (error) {
    if (error instanceof Dangling)
      return refuse('dangling', error.message, `There is no entry behind ${error.message}.`);
    return refuse('malformed', '', 'An entry holds letters that cannot be written to a file.');
  }
}

/** Entries as facts of this machine, numbered from 1. `own` is this machine's writer: its facts carry no origin. */
export function toFacts(file: CaseFile, own?: string): readonly Fact[] {
  return numbered({ caseId: file.caseId, entries: file.entries, own, after: new Map() });
}

interface Numbering {
  readonly caseId: string;
  /** In reading order. */
  readonly entries: readonly Entry[];
  readonly own: string | undefined;
  /** Entries this machine has already: "writer/n" → seq. */
  readonly after: ReadonlyMap<string, number>;
}

/** New entries as facts behind those that are here already. */
export function numbered({ caseId, entries, own, after }: Numbering): readonly Fact[] {
  const seqs = new Map(after);
  const inward = (ref: Ref): number => {
    const seq = seqs.get(name(ref));
    if (seq === undefined) throw new Dangling(name(ref));
    return seq;
  };
  return entries.map((entry): Fact => {
    const seq = seqs.size + 1;
    seqs.set(name(entry), seq);
    const { v: version, protocol, app, act, body } = entry.fact;
    return {
      v: version,
      caseId,
      seq,
      at: entry.at,
      act: inward(act),
      protocol,
      app: entry.writer === own ? app : withOrigin(app, entry),
      body: bodyIn(body, inward) as unknown as Fact['body'],
    };
  });
}

/** "writer/n" → seq of every stored fact. */
export function placesOf(facts: readonly Fact[], writer: string): ReadonlyMap<string, number> {
  return new Map(refsBySeq(facts, writer).map((ref, i) => [name(ref), i + 1]));
}

function shapeOf(json: unknown): Outcome<CaseFile> {
  const head = typeof json === 'object' && json !== null ? (json as { format?: unknown; v?: unknown }) : {};
  if (head.format !== 'rimwise-case') return refuse('notACaseFile', 'format', 'This is not a case file.');
  if (typeof head.v === 'number' && head.v > 1)
    return refuse('newerFormat', 'v', 'This case file was written by a newer version of the app.');
  const parsed = v.safeParse(caseFileSchema, json, { abortEarly: true });
  if (parsed.success) return { ok: true, value: parsed.output as unknown as CaseFile };
  const [issue] = parsed.issues;
  const where = v.getDotPath(issue) ?? '';
  return refuse(
    'malformed',
    where,
    `The case file is damaged at ${where === '' ? 'its top' : where}: ${issue.message}`,
  );
}

function chainFault(chain: readonly Entry[]): Refused | undefined {
  let prev = '';
  for (const [i, entry] of chain.entries()) {
    if (entry.n !== i + 1) {
      return entry.n === i
        ? refuse('forked', name(entry), `Two entries claim the place ${name(entry)}.`)
        : refuse('cut', name(entry), `Entries before ${name(entry)} are missing.`);
    }
    if (entry.prev !== prev)
      return refuse('changed', name(entry), `Entry ${name(entry)} does not follow the one before it.`);
    prev = entry.hash;
  }
  return undefined;
}

async function hashFault({ caseId, entries, digest }: CaseFile): Promise<Refused | undefined> {
  const hashes = await Promise.all(entries.map((entry) => entryHash(caseId, entry)));
  const wrong = entries.find((entry, i) => entry.hash !== hashes[i]);
  if (wrong !== undefined) return refuse('changed', name(wrong), `The content of entry ${name(wrong)} was changed.`);
  if ((await digestOf(caseId, entries)) === digest) return undefined;
  return refuse(
    'cut',
    'digest',
    'The entries are not the ones the digest was made from: entries at an end are missing or added.',
  );
}

function meaningFault(file: CaseFile): Refused | undefined {
  const odd = file.entries.find((entry) => originOf(entry.fact.app).from !== undefined);
  if (odd !== undefined) return refuse('malformed', name(odd), `Entry ${name(odd)} names an origin of its own.`);
  const parsed = parseFacts(toFacts(file));
  if (parsed.ok) return undefined;
  const at = file.entries[parsed.at - 1];
  const where = at === undefined ? '' : name(at);
  return refuse('malformed', where, `Entry ${where} cannot be read (${parsed.path}): ${parsed.text}`);
}

/** Equal copies of one entry are one entry. */
const once = (entries: readonly Entry[]) => [...new Map(entries.map((entry) => [entry.hash, entry])).values()];

/** Nobody's case goes through so many hands, and putting entries in order takes longer with each. Our choice. */
const MOST_WRITERS = 100;

async function verified(shaped: CaseFile): Promise<Outcome<CaseFile>> {
  if (new Set(shaped.entries.map((entry) => entry.writer)).size > MOST_WRITERS)
    return refuse('malformed', 'entries', `More than ${MOST_WRITERS} machines have written to this case.`);
  try {
    const unsorted = { ...shaped, entries: once(shaped.entries) };
    for (const chain of chainsOf(unsorted.entries).values()) {
      const fault = chainFault(chain);
      if (fault !== undefined) return fault;
    }
    const hash = await hashFault({ ...shaped, entries: shaped.entries });
    if (hash !== undefined) return hash;
    const ordered = readingOrder(unsorted.entries);
    if (!ordered.ok) return stuckAt(ordered.stuck);
    const file = { ...unsorted, entries: ordered.order };
    return meaningFault(file) ?? { ok: true, value: file };
  } catch (error) {
    if (error instanceof Dangling) return refuse('dangling', error.message, `There is no entry ${error.message}.`);
    return refuse('malformed', '', 'The case file holds letters that have no canonical form.');
  }
}

/** Text → a case file whose every entry has the hash it claims, in reading order. */
export async function readCaseText(text: string): Promise<Outcome<CaseFile>> {
  const json = readJson(text, MOST_FILE_BYTES);
  if (!json.ok && json.reason === 'notJson')
    return refuse('notJson', '', 'This file is not JSON: it is cut off or not a case file.');
  if (!json.ok) return refuse('malformed', json.path, `The case file cannot be read: ${json.text}`);
  const shaped = shapeOf(json.value);
  return shaped.ok ? verified(shaped.value) : shaped;
}

/**
 * Both files' entries, each once. Commutes, is idempotent and associative, and overwrites nothing: two files of different
 * cases are refused as `foreign`, two different entries with one number as `forked`.
 */
export async function mergeCaseFiles(a: CaseFile, b: CaseFile): Promise<Outcome<CaseFile>> {
  if (a.caseId !== b.caseId) return refuse('foreign', 'caseId', 'This file belongs to another case.');
  const entries = once([...a.entries, ...b.entries]);
  const places = new Map<string, string>();
  const forked = entries
    .filter((entry) => (places.get(name(entry)) ?? entry.hash) !== entry.hash || !places.set(name(entry), entry.hash))
    .toSorted((x, y) => x.n - y.n || (x.writer < y.writer ? -1 : 1))[0];
  if (forked !== undefined)
    return refuse('forked', name(forked), `The two files have different entries ${name(forked)}; nothing was merged.`);
  return assembled(a.caseId, entries);
}
