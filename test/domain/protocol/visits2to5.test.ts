import { describe, expect, it } from 'vitest';
import { stepsOfChapter, visibleSteps } from '../../../src/domain/protocol/index.ts';
import { answerOf, nextStep, previousStep, retakeSteps, stepOf } from '../../../src/domain/protocol/path.ts';
import type { VisitProtocol } from '../../../src/domain/protocol/types.ts';
import { visit2 } from '../../../src/domain/protocol/visit2.ts';
import { visit3 } from '../../../src/domain/protocol/visit3.ts';
import { visit4 } from '../../../src/domain/protocol/visit4.ts';
import { visit5 } from '../../../src/domain/protocol/visit5.ts';

/** What each visit has to get done, in words of our own, and the steps that do it (a trailing * stands for several). */
const COVERAGE: readonly (readonly [visit: VisitProtocol, what: string, steps: readonly string[]])[] = [
  [visit2, 'sign-in, with what has changed', ['sign-in-patient', 'sign-in-consent', 'sign-in-changes', 'arches']],
  [visit2, 'custom trays are here and right', ['work-returned', 'work-right']],
  [visit2, 'tray borders short, frena free, stable', ['*-custom-borders', '*-custom-stable']],
  [
    visit2,
    'border moulded, each section on a clock',
    ['*-mould-how', '*-mould-front', '*-mould-right', '*-mould-left'],
  ],
  [
    visit2,
    'the other sections, or all at once',
    ['upper-mould-rear', 'lower-mould-tongue-*', '*-mould-all', '*-mould-check'],
  ],
  [
    visit2,
    'final impressions on the clock',
    ['*-final-ready', '*-final', '*-final-surface', '*-final-borders', '*-final-keep'],
  ],
  [visit2, 'rear seal line', ['rear-seal']],
  [visit2, 'lip support, rim edge, planes, lower level', ['rim-*']],
  [visit2, 'new marks, rest three times, closed twice', ['marks', 'bases-*', 'rest-height', 'closed-height']],
  [visit2, '“s” and speaking space, adjust and measure again', ['sound-s', 'speaking-space', 'heights-keep']],
  [visit2, 'centric relation by tracings', ['centric-method', 'tracing-*', 'legs-wanted', 'leg-*']],
  [visit2, 'or by two records that agree', ['check-record-*', 'records-agree']],
  [visit2, 'axis to edge with a facebow', ['axis-incisal']],
  [visit2, 'midline, canine lines, high lip line', ['midline-*', 'canine-lines', 'high-lip-line']],
  [visit2, 'nose and face for tooth sizes', ['interalar-width', 'face-width', 'face-height']],
  [visit2, 'size of the front teeth chosen', ['teeth-chosen']],
  [visit2, 'shade in words, arrangement', ['shade-chosen', 'wish-arrangement']],
  [visit2, 'disinfected, poured', ['disinfect-*', 'pour-by']],
  [visit2, 'signed out with the order', ['read-back', 'flags-answered', 'lab-order', 'signoff-*']],

  [visit3, 'sign-in and work returned', ['sign-in-*', 'arches', 'work-*']],
  [visit3, 'seat, lip, midline, plane, show, shade', ['bases-seat', 'try-*', 'midline-*', 'tooth-*']],
  [
    visit3,
    'heights between new marks',
    ['marks', 'bases-rest', 'bases-closed', 'rest-height', 'closed-height', 'heights-keep'],
  ],
  [visit3, 's, f and v, m', ['sound-*', 'speaking-space']],
  [visit3, 'overlaps', ['front-relation', 'overjet', 'overbite']],
  [visit3, 'bite agrees, or a new record inside the visit', ['bite-agrees', 'new-record*', 'record-height']],
  [visit3, 'rear seal depth', ['seal-depth']],
  [
    visit3,
    'patient, companion, consent to finish, or another try-in',
    ['*-content', 'finish-consent', 'second-try-in'],
  ],
  [visit3, 'disinfected and signed out', ['disinfect-record', 'read-back', 'flags-answered', 'lab-order', 'signoff-*']],

  [visit4, 'sign-in and work returned', ['sign-in-*', 'arches', 'work-*']],
  [visit4, 'fitting surface smooth, pressure shown and relieved', ['fit-smooth', 'paste-*']],
  [visit4, 'borders and frena', ['borders-*']],
  [visit4, 'retention and stability', ['retention-*', 'stability-*']],
  [visit4, 'heights between new marks', ['marks', 'bases-*', 'rest-height', 'closed-height', 'heights-keep']],
  [visit4, 'remount, even contacts, pin change', ['remount', 'remount-record', 'grind', 'contacts', 'pin-*']],
  [visit4, 'places relieved, by name', ['relieved-*']],
  [visit4, 'speech and speaking space', ['sound-s', 'speaking-space']],
  [visit4, 'taught: insertion, cleaning, night, sore spots, swallowing', ['taught-*']],
  [visit4, 'review booked', ['review-booked']],
  [visit4, 'signed out', ['read-back', 'flags-answered', 'signoff-*']],

  [visit5, 'sign-in', ['sign-in-*', 'arches']],
  [visit5, 'complaints in the patient’s words', ['complaint', 'worn-today']],
  [visit5, 'sore areas by region, size, age, cause, relief', ['sore-*']],
  [visit5, 'a sore that stays: referral', ['ulcer-stays', 'ulcer-next']],
  [visit5, 'retention and stability', ['retention-*', 'stability-*']],
  [visit5, 'bite', ['contacts']],
  [visit5, 'heights between new marks', ['marks', 'bases-*', 'rest-height', 'closed-height', 'heights-keep']],
  [visit5, 'speaking space, where it can be seen', ['speaking-space']],
  [visit5, 'denture hygiene', ['denture-hygiene', 'mucosa-redness']],
  [visit5, 'further review or finished, yearly recall', ['what-next', 'recall']],
  [visit5, 'signed out', ['read-back', 'flags-answered', 'signoff-*']],
];

const matches = (pattern: string, id: string) =>
  new RegExp(`^${pattern.replaceAll('*', '.+')}$`).test(id) || (pattern.endsWith('*') && id === pattern.slice(0, -1));

describe.each([visit2, visit3, visit4, visit5].map((visit) => [visit.id, visit] as const))('%s', (_id, visit) => {
  const rows = COVERAGE.filter(([covered]) => covered === visit);
  const ids = visit.steps.map((step) => step.id);

  it.each(rows.map(([, what, patterns]) => [what, patterns] as const))('does: %s', (_what, patterns) => {
    for (const pattern of patterns)
      expect(
        ids.some((id) => matches(pattern, id)),
        pattern,
      ).toBe(true);
  });

  it('has no step that serves nothing in the table', () => {
    const patterns = rows.flatMap(([, , steps]) => steps);
    expect(ids.filter((id) => !patterns.some((pattern) => matches(pattern, id)))).toEqual([]);
  });

  it('asks for each height between marks made in this visit, after saying what is in the mouth', () => {
    const order = ['marks', 'bases-rest', 'rest-height', 'bases-closed', 'closed-height', 'heights-keep'];
    const places = order.map((id) => ids.indexOf(id));
    expect(places.every((place) => place >= 0)).toBe(true);
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(answerOf(stepOf(visit, 'heights-keep'), 'again')).toMatchObject({ goto: 'marks', retake: true });
  });
});

it('visit 2: adjusting the rims gives up closed height and speech, and keeps rest height', () => {
  const adjust = answerOf(stepOf(visit2, 'heights-keep'), 'adjust');
  const given = retakeSteps(visit2, adjust?.goto ?? '', 'heights-keep');
  expect(given).toEqual(['bases-closed', 'closed-height', 'sound-s', 'speaking-space', 'heights-keep']);
});

it('visit 2: tracings or check records, never both', () => {
  const tracing = visibleSteps(visit2, { 'centric-method': 'tracing' }).map((step) => step.id);
  const records = visibleSteps(visit2, { 'centric-method': 'check-records', 'legs-wanted': 'yes' }).map(
    (step) => step.id,
  );
  expect(tracing).toContain('tracing-3-y');
  expect(tracing).not.toContain('check-record-1');
  expect(records).toContain('records-agree');
  expect(records.filter((id) => id.startsWith('tracing') || id.startsWith('leg'))).toEqual([]);
});

it('visit 2: a centred midline asks for no distance', () => {
  expect(nextStep(visit2, 'midline-side', { 'midline-side': 'centred' })?.id).toBe('canine-lines');
  expect(nextStep(visit2, 'midline-side', { 'midline-side': 'left' })?.id).toBe('midline-offset');
});

it('visit 3: a refused bite brings a new record and no consent to finish', () => {
  const refused = visibleSteps(visit3, { 'bite-agrees': 'no' }).map((step) => step.id);
  expect(refused).toEqual(expect.arrayContaining(['new-record', 'record-height', 'new-record-keep', 'second-try-in']));
  expect(refused).not.toContain('finish-consent');
  const agreed = visibleSteps(visit3, { 'bite-agrees': 'yes' }).map((step) => step.id);
  expect(agreed).toContain('finish-consent');
  expect(agreed).not.toContain('new-record');
});

it('visit 3: the new record is measured between the marks of this visit', () => {
  const ids = visit3.steps.map((step) => step.id);
  expect(ids.indexOf('record-height')).toBeGreaterThan(ids.indexOf('marks'));
});

it.each([visit2, visit3, visit4])('without the lab work the visit ends at once, on record', (visit) => {
  expect(answerOf(stepOf(visit, 'work-returned'), 'no')).toMatchObject({ goto: 'read-back', needsReason: true });
});

it('visit 4: grinding goes on until contacts are even', () => {
  expect(answerOf(stepOf(visit4, 'contacts'), 'again')).toMatchObject({ goto: 'grind', retake: true });
});

it('visit 4: the pin is asked about only after a remount, and its amount only when it moved', () => {
  expect(nextStep(visit4, 'contacts', { remount: 'in-mouth' })?.id).toBe('sound-s');
  expect(nextStep(visit4, 'pin-direction', { remount: 'remounted', 'pin-direction': 'same' })?.id).toBe('sound-s');
  expect(nextStep(visit4, 'pin-direction', { remount: 'remounted', 'pin-direction': 'lower' })?.id).toBe('pin-change');
});

describe('visit 5: sore areas', () => {
  const from = (answers: Record<string, string>, at: string) => nextStep(visit5, at, answers)?.id;

  it('none at all leads straight on, and back the same way', () => {
    expect(from({ 'sore-1': 'none' }, 'sore-1')).toBe('ulcer-stays');
    expect(previousStep(visit5, 'ulcer-stays', { 'sore-1': 'none' })?.id).toBe('sore-1');
  });

  it('one, with its region, then no more', () => {
    const one = { 'sore-1': 'lower', 'sore-1-lower': 'lower-mylohyoid-left', 'sore-1-kind': 'red', 'sore-2': 'none' };
    expect(from(one, 'sore-1')).toBe('sore-1-lower');
    expect(from(one, 'sore-1-relieved')).toBe('sore-2');
    expect(from(one, 'sore-2')).toBe('ulcer-stays');
  });

  it('an ulcer puts up a caution, and one that stays asks for a decision with a reason', () => {
    expect(answerOf(stepOf(visit5, 'sore-1-kind'), 'ulcer')?.caution).toContain('referral');
    expect(from({ 'ulcer-stays': 'yes' }, 'ulcer-stays')).toBe('ulcer-next');
    expect(answerOf(stepOf(visit5, 'ulcer-next'), 'go-on')?.needsReason).toBe(true);
  });

  it('names regions the same way for both jaws, each once', () => {
    const ids = [...regionIds('sore-1-upper'), ...regionIds('sore-1-lower')];
    expect(new Set(ids).size).toBe(ids.length);
    expect(regionIds('sore-4-upper')).toEqual(regionIds('sore-1-upper'));
  });
});

function regionIds(step: string): readonly string[] {
  const asked = stepOf(visit5, step);
  return asked?.kind === 'check' ? asked.answers.map((answer) => answer.id) : [];
}

it('leaves the other jaw out in every visit when one denture is made', () => {
  for (const visit of [visit2, visit3, visit4, visit5]) {
    const upper = visibleSteps(visit, { arches: 'upper-only' }).map((step) => step.id);
    const lower = visibleSteps(visit, { arches: 'lower-only' }).map((step) => step.id);
    const side = (ids: readonly string[], jaw: string) =>
      ids.filter((id) => id.startsWith(`${jaw}-`) || (id.endsWith(`-${jaw}`) && !id.startsWith('sore')));
    expect(side(upper, 'lower')).toEqual([]);
    expect(side(lower, 'upper')).toEqual([]);
  }
});

it('every chapter of every visit has a step', () => {
  for (const visit of [visit2, visit3, visit4, visit5]) {
    for (const chapter of visit.chapters) expect(stepsOfChapter(visit, chapter.number).length).toBeGreaterThan(0);
  }
});
