import { expect, it } from 'vitest';
import { stepsOfChapter, visibleSteps } from '../../../src/domain/protocol/index.ts';
import { answerOf, nextStep, stepOf } from '../../../src/domain/protocol/path.ts';
import { answersOf } from '../../../src/domain/protocol/validate.ts';
import { visit1 } from '../../../src/domain/protocol/visit1.ts';

/** What each chapter has to get done, and the steps that do it. */
const COVERAGE: readonly (readonly [chapter: number, what: string, steps: readonly string[]])[] = [
  [1, 'right patient, right case code', ['sign-in-patient']],
  [1, 'consent', ['sign-in-consent']],
  [1, 'which jaws are treated', ['arches']],
  [1, 'allergies and sensitivities', ['sign-in-allergy']],
  [1, 'swallowing and choking', ['sign-in-swallow']],
  [1, 'gag reflex', ['sign-in-gag']],
  [1, 'blood thinners', ['sign-in-blood']],
  [1, 'bone drugs, radiotherapy of head or neck', ['sign-in-bone']],
  [
    2,
    'each region looked at and felt',
    ['mouth-mucosa', 'mouth-tongue', 'mouth-floor', 'mouth-palate', 'mouth-ridges'],
  ],
  [2, 'suspicious finding with size and age', ['finding', 'finding-size', 'finding-weeks']],
  [2, 'refer, or go on by recorded decision', ['finding-next']],
  [3, 'resorption and upper form', ['resorption', 'ridge-form-upper']],
  [3, 'bone height, if a radiograph is there', ['bone-height']],
  [3, 'muscle attachments and jaw relationship', ['muscle', 'jaw-relation']],
  [4, 'height with present dentures', ['old-dentures', 'old-height']],
  [4, 'worn, height lost, loose, broken', ['old-wear', 'old-hold']],
  [4, 'what should change', ['old-wishes']],
  [5, 'greatest width of the upper ridge', ['upper-width']],
  [6, 'width between the pads, length on demand', ['lower-width', 'lower-length']],
  [7, 'upper tray tried in, next or adapted', ['upper-tray-try', 'upper-tray', 'upper-tray-adapt', 'upper-tray-build']],
  [8, 'lower tray tried in, next or adapted', ['lower-tray-try', 'lower-tray', 'lower-tray-adapt', 'lower-tray-build']],
  [8, 'tongue free, no pain', ['lower-tray-tongue']],
  [9, 'one mix or syringe and tray', ['upper-mix', 'upper-syringe']],
  [9, 'dry, load, seat, hold, remove on the clock', ['upper-ready', 'upper-impression']],
  [10, 'surface, borders, rear end, tray', ['upper-surface', 'upper-borders', 'upper-rear', 'upper-through']],
  [10, 'keep or take again', ['upper-keep']],
  [11, 'vibrating line found, transferred, scored', ['rear-mark', 'rear-limit']],
  [12, 'lower taken on the clock', ['lower-mix', 'lower-ready', 'lower-syringe', 'lower-impression']],
  [13, 'pads, space behind, tongue side, shelf', ['lower-surface', 'lower-rear', 'lower-lingual', 'lower-borders']],
  [13, 'keep or take again', ['lower-keep']],
  [
    14,
    'sulcus depths where wanted',
    [
      'sulcus-wanted',
      'sulcus-upper-labial',
      'sulcus-upper-buccal-right',
      'sulcus-upper-buccal-left',
      'sulcus-lower-labial',
      'sulcus-lower-buccal-right',
      'sulcus-lower-buccal-left',
      'sulcus-lower-lingual-right',
      'sulcus-lower-lingual-left',
    ],
  ],
  [14, 'outline on the impression', ['outline-upper', 'outline-lower']],
  [15, 'rinse and disinfect on the clock', ['disinfect-upper', 'disinfect-lower']],
  [15, 'who pours', ['pour-by']],
  [16, 'two skin marks of this visit', ['marks']],
  [17, 'rest height with bases said', ['bases-rest', 'rest-height']],
  [17, 'closed height with bases said', ['bases-closed', 'closed-height', 'heights-keep']],
  [
    18,
    'room, height chosen, stiff mix, record on the clock',
    ['record-room', 'record-at', 'record-material', 'bite-record'],
  ],
  [18, 'height with the record in place', ['record-height']],
  [19, 'three points each, keep or again, disinfected', ['record-support', 'record-keep', 'disinfect-record']],
  [20, 'shape, shade in words, photographs', ['wish-shape', 'wish-shade', 'photos']],
  [21, 'read back, flags answered, order checked', ['read-back', 'flags-answered', 'lab-order']],
  [21, 'signed by both', ['signoff-assistant', 'signoff-clinician']],
];

it('has 21 chapters, and every step is there for something', () => {
  expect(visit1.chapters.map((chapter) => chapter.number)).toEqual(Array.from({ length: 21 }, (_, i) => i + 1));
  for (let chapter = 1; chapter <= 21; chapter += 1) {
    const wanted = COVERAGE.filter(([number]) => number === chapter).flatMap(([, , steps]) => steps);
    expect([...wanted].sort()).toEqual(
      stepsOfChapter(visit1, chapter)
        .map((step) => step.id)
        .sort(),
    );
  }
});

it('keeps a usual visit short: both jaws, dentures worn, one mix, no depths', () => {
  const usual = {
    arches: 'both',
    finding: 'no',
    'old-dentures': 'yes',
    'upper-tray': 'fits',
    'lower-tray': 'fits',
    'upper-mix': 'tray-only',
    'lower-mix': 'tray-only',
    'sulcus-wanted': 'no',
  };
  expect(visibleSteps(visit1, usual).length).toBeLessThanOrEqual(80);
});

it('leaves the other jaw out when one denture is made', () => {
  const upper = visibleSteps(visit1, { arches: 'upper-only' }).map((step) => step.id);
  expect(upper.filter((id) => id.includes('lower'))).toEqual([]);
  expect(upper).toContain('upper-impression');
  const lower = visibleSteps(visit1, { arches: 'lower-only' }).map((step) => step.id);
  expect(lower.filter((id) => id.includes('upper') || id.startsWith('rear'))).toEqual([]);
  expect(lower).toContain('lower-impression');
});

it('asks size, weeks and a decision only when a finding was noted', () => {
  expect(nextStep(visit1, 'finding', { finding: 'no' })?.id).toBe('ridge-form-upper');
  expect(nextStep(visit1, 'finding', { finding: 'yes' })?.id).toBe('finding-size');
  expect(answerOf(stepOf(visit1, 'finding-next'), 'stop')?.goto).toBe('read-back');
  expect(answerOf(stepOf(visit1, 'finding-next'), 'go-on')?.needsReason).toBe(true);
});

it('compares closed height only where there are dentures to close on', () => {
  const without = visibleSteps(visit1, { 'old-dentures': 'no' }).map((step) => step.id);
  expect(without).not.toContain('closed-height');
  expect(without).toContain('rest-height');
});

it('offers the answers that the class of the case is worked out from', () => {
  const ids = (step: string) => answersOf(stepOf(visit1, step)!).map((answer) => answer.id);
  expect(ids('ridge-form-upper')).toEqual(['A', 'B', 'C', 'D']);
  expect(ids('muscle')).toEqual(['A', 'B', 'C', 'D', 'E']);
  expect(ids('jaw-relation')).toEqual(['I', 'II', 'III']);
  expect(ids('resorption')).toEqual(['III', 'IV', 'V', 'VI']);
  expect(ids('record-at')).toEqual(['rest', 'restLessSpace']);
  expect(ids('bases-rest')).toEqual(['none', 'upper', 'lower', 'both']);
  expect(ids('marks')).toEqual(['made']);
});

it.each(['upper-keep', 'lower-keep', 'record-keep', 'heights-keep'])('%s: taking again needs a reason', (id) => {
  const again = answerOf(stepOf(visit1, id), 'again');
  expect(again).toMatchObject({ retake: true, needsReason: true });
});
