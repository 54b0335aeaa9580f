/**
 * References from one fact to another. On one machine they are `seq` numbers; in a case file they are writer and number.
 * They stand in `act`, and in the fields of the table below. The id of a flag may name readings too: a
 * part of it between colons that is all digits is a seq ("suspect:12"), in a file "suspect:@chair-1/12".
 */
import type { Ref } from './case-file.types.ts';

type Body = Readonly<Record<string, unknown>>;

/** Thrown inside this folder only, and caught where a file is made or read: a reference that leads nowhere. */
export class Dangling extends Error {}

/** Looks a reference up; throws Dangling when there is nothing there. */
export interface Outward {
  (seq: number): Ref;
}
export interface Inward {
  (ref: Ref): number;
}

const DIGITS = /^[1-9]\d{0,15}$/;
const FLAG_REF = /^@([a-z0-9][a-z0-9-]{0,39})\/([1-9]\d{0,15})$/;

function flagOut(flag: string, out: Outward): string {
  return flag
    .split(':')
    .map((part) => {
      if (FLAG_REF.test(part)) throw new Dangling(`flag ${flag}`);
      if (!DIGITS.test(part)) return part;
      const { writer, n } = out(Number(part));
      return `@${writer}/${n}`;
    })
    .join(':');
}

function flagIn(flag: string, inward: Inward): string {
  return flag
    .split(':')
    .map((part) => {
      if (DIGITS.test(part)) throw new Dangling(`flag ${flag}`);
      const found = FLAG_REF.exec(part);
      return found === null ? part : String(inward({ writer: found[1] ?? '', n: Number(found[2]) }));
    })
    .join(':');
}

/** Which fields of which kinds are references; a field that is absent refers to nothing. */
export const REF_FIELDS: Readonly<Record<string, readonly string[]>> = {
  reading: ['corrects'],
  undone: ['act'],
  takenOver: ['order'],
  labDue: ['order'],
  benchDone: ['order'],
  benchQuestion: ['order'],
  benchAnswer: ['question'],
  workReturned: ['order'],
};

function mapped(body: Body, change: (value: unknown) => unknown): Body {
  const kind = String(body['kind']);
  const fields = (Object.hasOwn(REF_FIELDS, kind) ? (REF_FIELDS[kind] ?? []) : []).filter(
    (field) => body[field] !== undefined,
  );
  return fields.length === 0
    ? body
    : { ...body, ...Object.fromEntries(fields.map((field) => [field, change(body[field])])) };
}

/** A body as it travels: local numbers become references. */
export function bodyOut(body: Body, out: Outward): Body {
  if (body['kind'] === 'flagAnswered') return { ...body, flag: flagOut(body['flag'] as string, out) };
  return mapped(body, (seq) => out(seq as number));
}

const isRef = (value: unknown): value is Ref =>
  typeof value === 'object' &&
  value !== null &&
  Object.keys(value).length === 2 &&
  typeof (value as Partial<Ref>).writer === 'string' &&
  typeof (value as Partial<Ref>).n === 'number';

/** A travelled body as this machine numbers it; throws Dangling for a reference of the wrong shape too. */
export function bodyIn(body: Body, inward: Inward): Body {
  const find = (value: unknown): number => {
    if (!isRef(value)) throw new Dangling('a reference of the wrong shape');
    return inward(value);
  };
  if (body['kind'] === 'flagAnswered' && typeof body['flag'] === 'string')
    return { ...body, flag: flagIn(body['flag'], inward) };
  return mapped(body, find);
}

/** Every reference an entry makes, its act first. For the order in which entries can be read. */
export function refsOf(act: Ref, body: Body): readonly Ref[] {
  const refs: Ref[] = [act];
  const collect = (ref: Ref): number => {
    refs.push(ref);
    return 1;
  };
  bodyIn(body, collect);
  return refs;
}
