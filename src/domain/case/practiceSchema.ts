/** Shape of a practice's settings, as facts carry them and as files bring them. Fields added later are optional. */
import * as v from 'valibot';
import { parseDay } from '../measure/calendar.ts';

const text = v.pipe(v.string(), v.maxLength(4000));
const id = v.pipe(v.string(), v.minLength(1), v.maxLength(200));
const int = v.pipe(v.number(), v.safeInteger());
const num = v.pipe(v.number(), v.finite());
/** A calendar day, "2027-03-31". */
export const day = v.pipe(
  v.string(),
  v.check((value) => parseDay(value) !== undefined, 'This is not a day written as 2027-03-31.'),
);

/** No practice has more of anything; a file with more is no file of ours. Our choice. */
const MOST = 500;
const listOf = <const Item extends v.GenericSchema>(item: Item) => v.pipe(v.array(item), v.maxLength(MOST));

const spoken = v.exactOptional(listOf(text));
/** Words per language. */
export const words = v.strictObject({ en: spoken, de: spoken, es: spoken, fr: spoken });

export const material = v.strictObject({
  id,
  name: text,
  class: id,
  mixS: num,
  workingS: num,
  removeS: num,
  pourFromMin: num,
  pourWithinMin: num,
  mix: v.exactOptional(v.strictObject({ powderG: num, waterMl: num, lessWater: v.exactOptional(num) })),
  waterC: v.exactOptional(num),
  lot: v.exactOptional(v.pipe(text, v.maxLength(60))),
  expires: v.exactOptional(day),
  generic: v.boolean(),
  source: text,
});

export const disinfectant = v.strictObject({ id, name: text, minutes: num, generic: v.boolean(), source: text });

const range = v.tuple([int, int]);

export const practice = v.strictObject({
  restSpaceTarget: int,
  recordAt: v.picklist(['rest', 'restLessSpace']),
  trayClearance: int,
  borderShort: int,
  materials: listOf(material),
  disinfectants: listOf(disinfectant),
  trays: listOf(v.strictObject({ id, label: text, arch: v.picklist(['upper', 'lower']), innerWidth: int })),
  reasons: listOf(v.strictObject({ id, label: text, words })),
  people: v.exactOptional(listOf(v.strictObject({ initials: id, role: v.picklist(['clinician', 'assistant']) }))),
  cautions: v.exactOptional(v.record(id, text)),
  labDays: v.exactOptional(v.strictObject({ customTrays: int, setUp: int, finish: int })),
  ranges: v.exactOptional(v.record(id, v.strictObject({ plausible: range, expected: range }))),
});
