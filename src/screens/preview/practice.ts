/** The practice's own screens with what a practice starts with, its people, and a case between two visits. */
import type { AppModel } from '../../app/model.ts';
import type { OwnView } from '../../app/own.types.ts';
import { dropStep } from '../../domain/protocol/edit.ts';
import { protocolDifference } from '../../domain/protocol/difference.ts';
import { lostBy } from '../../domain/protocol/needs.ts';
import { cautionPlaces } from '../../domain/protocol/own.ts';
import { defaultPractice } from '../../domain/protocol/practice.ts';
import { readingDefs } from '../../domain/protocol/readings.ts';
import { visit1 } from '../../domain/protocol/visit1.ts';
import { NOW } from './clocks.ts';

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

export const people: NonNullable<AppModel['people']> = [
  { initials: 'CL', role: 'clinician' },
  { initials: 'LM', role: 'clinician' },
  { initials: 'AS', role: 'assistant' },
  { initials: 'QA', role: 'assistant' },
];

export const labDue: NonNullable<AppModel['labDue']> = {
  order: 2,
  what: 'custom trays',
  day: '2026-05-19',
  agreed: false,
};

export const caseLine: NonNullable<AppModel['caseLine']> = [
  {
    visit: 1,
    name: 'visit 1',
    title: 'Assessment and primary impressions',
    state: 'done',
    closedAt: NOW,
    people: 'CL, AS',
    lab: { text: 'lab has: custom trays, due Tue 19 May', late: false },
  },
  { visit: 2, name: 'visit 2', title: 'Definitive impressions and jaw relation', state: 'next' },
  { visit: 3, name: 'visit 3', title: 'Try-in', state: 'later' },
  { visit: 4, name: 'visit 4', title: 'Insertion', state: 'later' },
  { visit: 5, name: 'visit 5', title: 'Review', state: 'later' },
];

export const preferences: NonNullable<AppModel['preferences']> = {
  language: 'en',
  earMode: 'readings',
  addressWord: 'rim',
  speech: true,
  volume: 0.8,
  rate: 1,
  keepAfterMs: 0,
  mayLeaveDevice: false,
  standsAt: 'chair',
  lockAfterMin: 5,
  lockOnHide: false,
  backupEveryDays: 7,
  onDevice: 'fetchable',
};
