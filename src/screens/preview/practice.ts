/** The practice's own screens with what a practice starts with. */
import type { OwnView } from '../../app/own.types.ts';
import { dropStep } from '../../domain/protocol/edit.ts';
import { protocolDifference } from '../../domain/protocol/difference.ts';
import { lostBy } from '../../domain/protocol/needs.ts';
import { cautionPlaces } from '../../domain/protocol/own.ts';
import { defaultPractice } from '../../domain/protocol/practice.ts';
import { readingDefs } from '../../domain/protocol/readings.ts';
import { visit1 } from '../../domain/protocol/visit1.ts';

const [first, ...others] = defaultPractice.materials;

export const own: OwnView = {
  practice: {
    ...defaultPractice,
    materials: [{ ...first!, lot: 'A 12', expires: '2026-09-30', generic: false }, ...others],
    people: [
      { initials: 'CL', role: 'clinician' },
      { initials: 'AS', role: 'assistant' },
    ],
    ranges: { 'upper-width': { plausible: [3500, 8000], expected: [4500, 6800] } },
    cautions: { marks: 'Marks of this visit only: never compare with others.' },
  },
  visits: [{ visit: 1, title: visit1.title, version: 'visit-1, version 1' }],
  cautions: cautionPlaces([visit1]),
  readings: readingDefs,
  taken: { en: [], de: [], es: [], fr: [] },
};

const draft = dropStep(visit1, 'closed-height');

export const ownEdited: OwnView = {
  ...own,
  protocol: {
    before: visit1,
    draft,
    version: 2,
    problems: [],
    warnings: lostBy(visit1, draft),
    difference: protocolDifference(visit1, draft),
  },
};
