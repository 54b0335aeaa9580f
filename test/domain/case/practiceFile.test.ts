/** A practice's settings as a file: the same settings come back, and what is broken is refused with place and reason. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { problemText } from '../../../src/domain/case/fileFormat.ts';
import { parseFact } from '../../../src/domain/case/parse.ts';
import { practiceFileText, practiceProblems, readPracticeFile } from '../../../src/domain/case/practiceFile.ts';
import { defaultPractice } from '../../../src/domain/protocol/practice.ts';
import type { Practice } from '../../../src/domain/protocol/types.ts';

const [first, ...others] = defaultPractice.materials;
const own: Practice = {
  ...defaultPractice,
  restSpaceTarget: 250,
  materials: [{ ...first!, generic: false, lot: 'A 12', expires: '2027-03-31' }, ...others],
  people: [
    { initials: 'KV', role: 'clinician' },
    { initials: 'BR', role: 'assistant' },
  ],
  cautions: { 'upper-impression': 'Watch the airway.' },
  ranges: { 'upper-width': { plausible: [3500, 8000], expected: [4500, 7000] } },
};

/** A file's content as somebody with an editor may leave it. */
type Loose = { [name: string]: unknown; materials: object[]; trays?: object[] };

function broken(change: (content: Loose) => void): string {
  const file = JSON.parse(practiceFileText(own)) as { content: Loose };
  change(file.content);
  const read = readPracticeFile(JSON.stringify(file));
  return read.ok ? '' : problemText(read);
}

describe('a practice file', () => {
  it('brings back the settings it was written from, the starting ones included', () => {
    for (const practice of [defaultPractice, own])
      expect(readPracticeFile(practiceFileText(practice))).toEqual({ ok: true, value: practice });
  });

  it('settings with lots, people and own wording travel in the fact that opens a case', () => {
    const body = { kind: 'caseOpened', code: 'X', demo: false, practice: own };
    const fact = { v: 1, caseId: 'c', seq: 1, at: 1, act: 1, protocol: '', app: 'test', body };
    expect(parseFact(JSON.parse(JSON.stringify(fact)))).toEqual({ ok: true, fact });
  });

  it.each<[string, (content: Loose) => void, string]>([
    ['a missing list', (c) => delete c.trays, 'trays: This is missing.'],
    ['an unknown field', (c) => Object.assign(c, { colour: 'red' }), 'colour: This has no place in the file.'],
    [
      'a word for a number',
      (c) => Object.assign(c.materials[0]!, { workingS: 'long' }),
      'materials.0.workingS: Here stands "long". Wanted: number.',
    ],
    [
      'a day that does not exist',
      (c) => Object.assign(c.materials[0]!, { expires: '2027-02-30' }),
      'materials.0.expires: This is not a day written as 2027-03-31.',
    ],
    [
      'working time before mixing',
      (c) => Object.assign(c.materials[0]!, { workingS: 10 }),
      'materials.0.workingS: Working time ends before mixing does.',
    ],
    [
      'a rest space of a centimetre',
      (c) => Object.assign(c, { restSpaceTarget: 1000 }),
      'restSpaceTarget: 10 is not between 1 and 8 mm.',
    ],
    [
      'a tray as wide as a hand',
      (c) => Object.assign(c.trays![2]!, { innerWidth: 54_000 }),
      'trays.2.innerWidth: 540 is not between 20 and 120 mm.',
    ],
    [
      'two materials of one name',
      (c) => Object.assign(c.materials[1]!, { id: own.materials[0]!.id }),
      `materials: Two entries are called “${own.materials[0]!.id}”.`,
    ],
    [
      'an emptied caution',
      (c) => Object.assign(c, { cautions: { marks: ' ' } }),
      'cautions.marks: A caution may be worded anew, not emptied.',
    ],
    [
      'a range upside down',
      (c) => Object.assign(c, { ranges: { 'upper-width': { plausible: [8000, 3500], expected: [4500, 7000] } } }),
      'ranges.upper-width: The lower end',
    ],
    [
      'a range of an unknown reading',
      (c) => Object.assign(c, { ranges: { nose: { plausible: [1, 4], expected: [2, 3] } } }),
      'ranges.nose: There is no reading “nose”.',
    ],
    [
      'a range beyond the instrument',
      (c) => Object.assign(c, { ranges: { 'upper-width': { plausible: [3500, 30_100], expected: [4500, 7000] } } }),
      'ranges.upper-width.plausible: The instrument reads 0 to 300 mm.',
    ],
    [
      'a score beyond its scale',
      (c) => Object.assign(c, { ranges: { 'retention-upper': { plausible: [0, 500], expected: [0, 300] } } }),
      'ranges.retention-upper.plausible: The instrument reads 0 to 3 points.',
    ],
    [
      'a range that accepts nothing',
      (c) => Object.assign(c, { ranges: { 'upper-width': { plausible: [3500, 8000], expected: [4500, 4500] } } }),
      'ranges.upper-width: The lower end of a range must be below its upper end.',
    ],
    [
      'a reason without a name',
      (c) => Object.assign(c, { reasons: [{ id: 'x', label: ' ', words: {} }] }),
      'reasons.0: This entry has no name.',
    ],
    [
      'a reason too long for a target',
      (c) => Object.assign(c, { reasons: [{ id: 'x', label: 'a'.repeat(37), words: {} }] }),
      'reasons.0.label: 37 characters; at most 36 can be read from afar.',
    ],
    [
      'a reason in capitals',
      (c) => Object.assign(c, { reasons: [{ id: 'x', label: 'X', words: { en: ['Voids'] } }] }),
      'reasons.0.words.en: “Voids” must be lower case, without blanks at the ends.',
    ],
    [
      'two reasons that listen to one word',
      (c) =>
        Object.assign(c, {
          reasons: [
            { id: 'x', label: 'X', words: { de: ['blasen'] } },
            { id: 'y', label: 'Y', words: { de: ['blasen'] } },
          ],
        }),
      'reasons: Two reasons listen to “blasen” (de).',
    ],
    [
      'powder without water',
      (c) => Object.assign(c.materials[0]!, { mix: { powderG: 23, waterMl: 0 } }),
      'materials.0.mix: Powder and water of a portion must both be more than nothing.',
    ],
    [
      'more than half the water left out',
      (c) => Object.assign(c.materials[0]!, { mix: { powderG: 23, waterMl: 50, lessWater: 0.6 } }),
      'materials.0.mix: At most half of the water can be left out.',
    ],
    [
      'water that is no water',
      (c) => Object.assign(c.materials[0]!, { waterC: 90 }),
      'materials.0.waterC: 90 is not between 0 and 60 °C.',
    ],
    [
      'a laboratory of half a year',
      (c) => Object.assign(c, { labDays: { customTrays: 180, setUp: 7, finish: 10 } }),
      'labDays.customTrays: 180 is not between 0 and 120 days.',
    ],
    [
      'a caution too long to be read',
      (c) => Object.assign(c, { cautions: { marks: 'a'.repeat(141) } }),
      'cautions.marks: 141 characters; at most 140 can be read from afar.',
    ],
    [
      'a name where initials belong',
      (c) => Object.assign(c, { people: [{ initials: 'Somebody', role: 'clinician' }] }),
      'people.0: Six letters at most, never a name.',
    ],
  ])('is refused for %s, with its place', (_name, change, why) => {
    expect(broken(change)).toContain(why);
  });

  it.each([
    ['', 'This file is not JSON.'],
    ['[]', 'This file is not a “rimwise practice” file.'],
    ['{"kind":"rimwise protocol","format":1,"content":{}}', 'This file is not a “rimwise practice” file.'],
    ['{"kind":"rimwise practice","format":2,"content":{}}', 'newer version'],
    ['{"kind":"rimwise practice","format":0,"content":{}}', 'Format 0 of this file is not known.'],
  ])('is refused as a whole: %s', (text, why) => {
    const read = readPracticeFile(text);
    expect(read.ok ? '' : read.text).toContain(why);
  });

  it('whatever is in a file, reading it ends in settings that can be worked with or in a sentence', () => {
    const content = fc.oneof(
      fc.jsonValue(),
      fc.constant(own).map((p) => ({ ...p, materials: [] })),
    );
    fc.assert(
      fc.property(content, (value) => {
        const read = readPracticeFile(JSON.stringify({ kind: 'rimwise practice', format: 1, content: value }));
        if (read.ok) expect(practiceProblems(read.value)).toEqual([]);
        else expect(read.text).toMatch(/\.$/);
      }),
    );
  });
});
