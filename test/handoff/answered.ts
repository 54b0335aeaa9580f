/** The recorded clean visit with lots on its packages, and what a laboratory wrote to it since. */
import type { Fact, FactBody } from '../../src/domain/case/facts.ts';
import { foldCase } from '../../src/domain/case/fold.ts';
import { defaultPractice } from '../../src/domain/protocol/practice.ts';
import { readingDefs } from '../../src/domain/protocol/readings.ts';
import { visit1 } from '../../src/domain/protocol/visit1.ts';
import { summarise } from '../../src/domain/summary/summarise.ts';
import { stamp } from '../helpers/facts.ts';
import { recorded, type Recorded } from './cases.ts';

export const LOT = { lot: 'A-17', expires: '2027-03-31' } as const;

const clinic = recorded('clean').facts.map((fact): Fact => {
  const { body } = fact;
  if (body.kind !== 'clockStarted' || body.flow !== 'impression') return fact;
  return { ...fact, body: { ...body, material: { ...body.material, ...LOT } } };
});
const caseId = clinic[0]?.caseId ?? '';
const order = clinic.find((fact) => fact.body.kind === 'visitOpened')?.seq ?? 0;
const from = clinic.length + 1;
const by = 'MT';

const bodies: readonly FactBody[] = [
  { kind: 'benchDone', order, line: 'trim', what: 'Trim the casts.', by },
  { kind: 'benchQuestion', order, line: 'border', what: 'Custom trays.', text: 'How short at the back?', by },
  { kind: 'benchQuestion', order, line: '', what: '', text: 'Which rim first?', by },
  { kind: 'benchAnswer', question: from + 2, text: 'The upper one.', by: 'KV' },
  { kind: 'benchDone', order, line: 'relief', what: 'Relieve with wax.', by },
  { kind: 'undone', act: from + 4, what: 'x' },
  { kind: 'workReturned', order, text: 'trays only', by },
];

const now = (clinic.at(-1)?.at ?? 0) + 3_600_000;

function made(facts: readonly Fact[]): Recorded {
  const view = foldCase(caseId, facts);
  return {
    facts,
    summary: summarise(view, { protocol: visit1, readings: readingDefs, practice: defaultPractice, now }),
  };
}

/** Before the laboratory wrote, and after. */
export const before = made(clinic);
export const answered = made([...clinic, ...stamp(bodies, from, now).map((fact) => ({ ...fact, caseId }))]);
