/**
 * References from one fact to another. On one machine they are `seq` numbers; in a case file they are writer and number.
 * Three places hold them: `act`, a reading's `corrects`, and an undo's `act`. The id of a flag may name readings too: a
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

/** A body as it travels: local numbers become references. */
export function bodyOut(body: Body, out: Outward): Body {
  if (body['kind'] === 'reading' && body['corrects'] !== undefined)
    return { ...body, corrects: out(body['corrects'] as number) };
  if (body['kind'] === 'undone') return { ...body, act: out(body['act'] as number) };
  if (body['kind'] === 'flagAnswered') return { ...body, flag: flagOut(body['flag'] as string, out) };
  return body;
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
  if (body['kind'] === 'reading' && body['corrects'] !== undefined)
    return { ...body, corrects: find(body['corrects']) };
  if (body['kind'] === 'undone') return { ...body, act: find(body['act']) };
  if (body['kind'] === 'flagAnswered' && typeof body['flag'] === 'string')
    return { ...body, flag: flagIn(body['flag'], inward) };
  return body;
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
