import { describe, expect, it } from 'vitest';
import { figuresAt } from '../../src/app/figures.ts';
import { defaultPractice } from '../../src/domain/protocol/practice.ts';
import { stepOf } from '../../src/domain/protocol/path.ts';
import type { Summary } from '../../src/domain/summary/types.ts';
import type { VisitProtocol } from '../../src/domain/protocol/types.ts';
import { visit1 } from '../../src/domain/protocol/visit1.ts';
import { visit2 } from '../../src/domain/protocol/visit2.ts';
import { visit3 } from '../../src/domain/protocol/visit3.ts';
import { visit4 } from '../../src/domain/protocol/visit4.ts';
import { visit5 } from '../../src/domain/protocol/visit5.ts';
import { bench, firstVisit } from '../helpers/visit.ts';

const step = (id: string) => visit1.steps.find((s) => s.id === id)!;
const texts = (b: ReturnType<typeof bench>, id: string, chosen?: string) =>
  figuresAt(step(id), { summary: b.summary(), practice: defaultPractice, chosen }).map((f) => `${f.label}: ${f.text}`);

function type(b: ReturnType<typeof bench>, id: string, ...mms: string[]): void {
  b.press(`goto:${id}`);
  for (const mm of mms) {
    b.type(mm);
    b.press('yes');
  }
}

describe('figures at a step', () => {
  it('the class stands where the last of its criteria is judged, and says what is missing before', () => {
    const b = bench(firstVisit);
    b.press('goto:ridge-form-upper');
    b.press('answer:B');
    expect(texts(b, 'jaw-relation').join()).toMatch(/Incomplete, at least class II.*missing/);
    type(b, 'bone-height', '17');
    b.press('goto:muscle');
    b.press('answer:B');
    b.press('answer:I');
    expect(texts(b, 'jaw-relation').join()).toMatch(/^Complete edentulism class: Class II, decided by/);
  });

  it('the tray to try first stands at the try-in of its own arch', () => {
    const b = bench(firstVisit);
    type(b, 'upper-width', '58');
    expect(texts(b, 'upper-tray-try').join()).toContain('Upper 72');
    expect(texts(b, 'lower-tray-try')).toEqual([]);
  });

  it('the caliper is set to rest height less the chosen space, or to rest height when that was chosen', () => {
    const b = bench(firstVisit);
    b.press('goto:marks');
    b.press('answer:made');
    type(b, 'rest-height', '70', '70.5', '70');
    expect(texts(b, 'record-material')).toEqual(['Close to: 67.0 mm (rest height less 3.0 mm)']);
    b.press('goto:record-at');
    b.press('answer:rest');
    expect(texts(b, 'record-material')).toEqual(['Close to: 70.0 mm (rest height)']);
  });

  it('a stiff mix is the leaflet’s powder with the share of water left out', () => {
    const b = bench(firstVisit);
    // 23 g to 50 ml less 10 %: 45 ml, ratio 0.511 against 0.460, 11 % thicker (worked by hand).
    expect(texts(b, 'bite-record', 'alginate-stiff').join()).toMatch(
      /23 g powder, 45 ml water, water at 21 °C\. 11 % thicker/,
    );
    expect(texts(b, 'upper-impression', 'polyether')).toEqual([]);
  });
});

describe('figures at the steps of the later visits', () => {
  const ground = (protocol: VisitProtocol) => ({ ...firstVisit, protocol });
  const at = (b: ReturnType<typeof bench>, protocol: VisitProtocol, id: string) =>
    figuresAt(stepOf(protocol, id)!, { summary: b.summary(), practice: defaultPractice, chosen: undefined }).map(
      (f) => `${f.label}: ${f.text}`,
    );

  function heights(b: ReturnType<typeof bench>): void {
    b.press('goto:marks');
    b.press('answer:made');
    type(b, 'rest-height', '71', '71.5', '72');
    type(b, 'closed-height', '68.5', '69.5');
  }

  it.each([
    ['visit 2', visit2, 'heights-keep'],
    ['visit 3', visit3, 'bite-agrees'],
    ['visit 4', visit4, 'contacts'],
  ])('%s: what the wanted space would take, in chin, pin and molar', (_name, protocol, id) => {
    // Rest 71.5, closed 69: 71.5 − 3 − 69 = −0.5 at the chin; pin 1.5 × 0.8 to 1.0 of it, molar 0.42 to 0.62 of it.
    const b = bench(ground(protocol));
    heights(b);
    expect(at(b, protocol, id).join()).toContain(
      'chin −0.5 mm; incisors −0.5 to −0.4 mm; pin −0.8 to −0.6 mm; first molar −0.3 to −0.2 mm',
    );
  });

  it('before grinding is read off the pin, what a millimetre there means elsewhere', () => {
    // Pin 1 mm: incisors 2/3 = 0.667 (published rule 3 : 2), chin 0.667 / 0.832 = 0.80, first molar 0.80 × 0.524 = 0.42.
    const b = bench(ground(visit4));
    expect(at(b, visit4, 'pin-direction')).toEqual([
      'One millimetre at the pin: incisors 0.7 mm, chin 0.8 mm, first molar 0.4 mm',
    ]);
  });

  it('while the hold is scored, the scores of the last visit that had them stand beside', () => {
    const b = bench(ground(visit5));
    const hold: Summary['hold'] = [
      {
        visit: 'visit 4',
        upper: { retention: 3, stability: 2 },
        version: 'each denture alone, 0 to 5',
        sum: 5,
        most: 5,
      },
    ];
    const shown = (id: string) =>
      figuresAt(stepOf(visit5, id)!, {
        summary: { ...b.summary(), hold },
        practice: defaultPractice,
        chosen: undefined,
      }).map((f) => `${f.label}: ${f.text} (${f.status})`);
    expect(shown('retention-upper')).toEqual(['At visit 4: 3 (from memory)']);
    expect(shown('stability-upper')).toEqual(['At visit 4: 2 (from memory)']);
    expect(shown('retention-lower')).toEqual([]);
  });

  it('the days of the reviews stand where they are booked, counted from today', () => {
    // The visit is of 2 March 2026: a day or two later, then after 7 and 28 days.
    const b = bench(ground(visit4));
    expect(at(b, visit4, 'review-booked')).toEqual([
      'Handed over today: 2026-03-03 to 2026-03-04, 2026-03-09, 2026-03-30, then 2027-03-02',
    ]);
  });

  it('where the cause is looked for, what to look at first stands', () => {
    const b = bench(ground(visit5));
    b.press('goto:sore-1');
    b.press('answer:upper');
    b.press('answer:upper-ridge');
    expect(at(b, visit5, 'sore-1-cause').join()).toMatch(
      /ridge crest.*Look at the bite and a sharp edge of bone first/,
    );
    expect(at(b, visit5, 'sore-2-cause')).toEqual([]);
  });
});

describe('water temperature', () => {
  it('called out of turn, it is held against the leaflet of the next mix, and warns from 3 °C off', () => {
    const b = bench(firstVisit);
    b.press('goto:upper-impression');
    b.say('water twenty five');
    b.press('yes');
    expect(b.summary().readings.at(-1)).toMatchObject({ reading: 'water-temperature', value: 2500, unit: '°C' });
    b.press('material:alginate-regular');
    b.wait(1000);
    b.press('start');
    const flag = b.summary().flags.find((f) => f.id.startsWith('water:'));
    expect(flag?.what).toContain('water at 25 °C');
    expect(flag?.why).toContain('faster');
  });

  it('within 3 °C nothing is said', () => {
    const b = bench(firstVisit);
    b.press('goto:upper-impression');
    b.say('water twenty three');
    b.press('yes');
    b.press('material:alginate-regular');
    b.wait(1000);
    b.press('start');
    expect(b.summary().flags.filter((f) => f.id.startsWith('water:'))).toEqual([]);
  });
});
