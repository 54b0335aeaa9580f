/** The order after the later visits: what the laboratory is to do then, with the numbers of that visit, never those of visit 1. */
import { describe, expect, it } from 'vitest';
import type { FactBody } from '../../../src/domain/case/facts.ts';
import { answered } from '../../helpers/facts.ts';
import { at, summaryOf } from '../../helpers/sittings.ts';

const note = (step: string, text: string): FactBody => ({ kind: 'note', step, text, source: 'keypad' });
const heights = [
  answered('marks', 'made'),
  answered('bases-rest', 'both'),
  ...at('rest-height', 71, 71.5, 72),
  answered('bases-closed', 'both'),
  ...at('closed-height', 68.5, 69, 69.5),
];
const order = (visit: number, ...bodies: (FactBody | readonly FactBody[])[]) =>
  summaryOf({ visit, bodies: [...bodies, answered('lab-order', 'yes')] }).labWork;
const text = (lines: ReturnType<typeof order>) => lines.map((line) => `${line.text} ${line.detail ?? ''}`).join('\n');

describe('after a visit that ended before its work', () => {
  it.each([
    ['it was not the right patient', 2, [answered('sign-in-patient', 'no')]],
    ['consent was not given', 3, [answered('sign-in-consent', 'no'), answered('finish-consent', 'yes')]],
    ['the work was not here', 2, [answered('work-returned', 'no')]],
    ['stopped and referred', 1, [answered('finding', 'yes'), answered('finding-next', 'stop')]],
  ])('nothing is ordered: %s', (_why, visit, bodies) => {
    expect(order(visit, ...bodies)).toEqual([]);
  });

  it('the finding taken back, the work is ordered', () => {
    const bodies = [answered('finding', 'yes'), answered('finding-next', 'stop'), answered('finding', 'no')];
    expect(text(order(1, ...bodies))).toContain('Trim the casts');
  });
});

describe('after visit 2', () => {
  const points = [10, 10.2, 10.1].flatMap((x, i) => [...at(`tracing-${i + 1}-x`, x), ...at(`tracing-${i + 1}-y`, 20)]);
  const lines = order(
    2,
    heights,
    answered('centric-method', 'tracing'),
    points,
    answered('midline-side', 'right'),
    ...at('midline-offset', 1.5),
    ...at('canine-lines', 46),
    ...at('high-lip-line', 4),
    ...at('face-width', 136),
    answered('teeth-chosen', 'noted'),
    note('teeth-chosen', 'medium square'),
    note('shade-chosen', 'light, a little grey'),
    answered('shade-chosen', 'noted'),
  );

  it('mounts by the record at the closed height, and says what another space would take', () => {
    // Closed 69.0. Rest 71.5 − 69 = 2.5; wanted 3.0: chin −0.5, pin −0.75 to −0.6.
    expect(text(lines)).toContain('Mount by the needle-point tracing, at the closed height: pin as it stands.');
    expect(text(lines)).toContain('closed 69.0 mm');
    expect(text(lines)).toMatch(/only if the clinic asks.*chin −0\.5 mm/i);
    expect(text(lines)).toContain('Middle of the points 10.1 across, 20.0 up');
  });

  it('sets up by the guide marks, the chosen teeth and the spread of the rules', () => {
    expect(text(lines)).toContain('Set up the teeth for the try-in.');
    expect(text(lines)).toContain('medium square');
    expect(text(lines)).toContain('midline 1.5 mm, to the patient’s right');
    expect(text(lines)).toContain('between the canine lines 46 mm');
    expect(text(lines)).toMatch(/Six upper front teeth, along the curve 40\.5 to 46\.0 mm/);
    expect(text(lines)).toContain('light, a little grey');
  });

  it('says so where words were noted and none were kept, or nothing was chosen yet', () => {
    const bare = text(order(2, answered('shade-chosen', 'noted'), answered('teeth-chosen', 'none')));
    expect(bare).toContain('shade: noted, but no words were kept: ask the clinic');
    expect(bare).toContain('teeth: not chosen yet');
  });

  it('orders nothing of visit 1', () => {
    expect(text(lines)).not.toMatch(/custom trays|preliminary record|outline/i);
  });
});

describe('after visit 3', () => {
  it('consent given: finish, rear seal as deep as measured, casts kept', () => {
    const lines = order(3, answered('finish-consent', 'yes'), answered('bite-agrees', 'yes'), at('seal-depth', 1));
    expect(text(lines)).toContain('Process and finish; keep the casts for the remount.');
    expect(text(lines)).toContain('Cut the rear seal 1 mm deep at the line.');
  });

  it('bite refused: the new record at its height, with chin, pin and molar; no finishing', () => {
    // Rest 70, record 69, wanted 3: −2 at the chin; incisors 1.6 to 2.0, pin 2.4 to 3.0, first molar 0.84 to 1.24.
    const lines = order(
      3,
      [answered('marks', 'made'), ...at('rest-height', 70, 70, 70), ...at('record-height', 69)],
      answered('bite-agrees', 'no'),
    );
    expect(text(lines)).toContain('Mount again by the new record, made at 69.0 mm.');
    expect(text(lines)).toContain(
      'chin −2.0 mm; incisors −2.0 to −1.6 mm; pin −3.0 to −2.4 mm; first molar −1.2 to −0.8 mm',
    );
    expect(text(lines)).toContain('second try-in');
    expect(text(lines)).not.toContain('finish');
  });

  it('no consent: changes as said, another try-in', () => {
    const lines = order(
      3,
      answered('bite-agrees', 'yes'),
      answered('patient-content', 'changes'),
      note('patient-content', 'teeth a little shorter'),
      answered('finish-consent', 'no'),
    );
    expect(text(lines)).toContain('Change as noted, back for another try-in.');
    expect(text(lines)).toContain('teeth a little shorter');
    expect(text(lines)).not.toContain('Process and finish');
  });
});

describe('after the others', () => {
  it.each([4, 5])('visit %i sends nothing', (visit) => {
    expect(order(visit, heights)).toEqual([]);
  });

  it('but a review may ask for a remount', () => {
    expect(text(order(5, answered('contacts', 'remount')))).toContain('Remount the dentures');
  });

  it('and nothing stands there when the clinic said that nothing goes to the lab', () => {
    const none = summaryOf({
      visit: 3,
      bodies: [answered('finish-consent', 'yes'), answered('lab-order', 'no-order')],
    });
    expect(none.labWork).toEqual([]);
  });
});
