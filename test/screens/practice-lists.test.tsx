// @vitest-environment happy-dom
/** What the practice may enter by itself: materials, ranges, cautions, reasons; and what is refused, with why. */
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { OwnView } from '../../src/app/own.types.ts';
import { cautionPlaces } from '../../src/domain/protocol/own.ts';
import { defaultPractice } from '../../src/domain/protocol/practice.ts';
import { readingDefs } from '../../src/domain/protocol/readings.ts';
import { visit1 } from '../../src/domain/protocol/visit1.ts';
import type { Practice } from '../../src/domain/protocol/types.ts';
import { fetchPractice } from '../../src/screens/practice/Lazy.tsx';
import { states } from '../../src/screens/preview/states.ts';
import { mount, type Mounted } from './mount.tsx';

const anyVisit = Object.values(states).find((model) => model.place === 'visit' && model.step?.mode === 'check')!;
const view = (practice: Practice = defaultPractice): OwnView => ({
  practice,
  visits: [{ visit: 1, title: visit1.title, version: 'visit-1, version 1' }],
  cautions: cautionPlaces([visit1]),
  readings: readingDefs,
  taken: { en: ['next'], de: ['weiter'], es: [], fr: [] },
});

let mounted: Mounted | undefined;
const open = (own: OwnView): Mounted => (mounted = mount({ ...anyVisit, place: 'practice', own }));
beforeAll(() => fetchPractice());
afterEach(() => mounted?.close());

const saved = (shown: Mounted): Practice => {
  const [request] = shown.actions.askOwn.mock.lastCall as [{ ask: string; practice: Practice }];
  expect(request.ask).toBe('savePractice');
  return request.practice;
};
const formTrouble = (shown: Mounted) => shown.page.querySelector('.entry-form .trouble')?.textContent ?? '';

describe('a material of the practice’s own', () => {
  const fill = (shown: Mounted, more: Readonly<Record<string, string>> = {}) => {
    shown.click('Add a material');
    const all = {
      Name: 'Our putty',
      'Mixing ends': '45',
      'Working time ends': '90',
      'Remove from the mouth': '300',
      'Pour not before': '0',
      'Pour within': '600',
      Lot: 'C 3',
      'Last day of use': '2027-06-30',
      ...more,
    };
    for (const [field, text] of Object.entries(all)) shown.write(field, text);
  };

  it('is added with its kind, phases, lot and last day', () => {
    const shown = open(view());
    fill(shown);
    shown.click('Kind: Silicone putty');
    shown.click('Keep');
    expect(saved(shown).materials.at(-1)).toEqual({
      id: 'our-putty',
      name: 'Our putty',
      class: 'silicone-putty',
      mixS: 45,
      workingS: 90,
      removeS: 300,
      pourFromMin: 0,
      pourWithinMin: 600,
      lot: 'C 3',
      expires: '2027-06-30',
      generic: false,
      source: 'The leaflet, as entered by the practice.',
    });
  });

  it('takes powder, water and water left out', () => {
    const shown = open(view());
    fill(shown, { 'Powder of a portion': '16', 'Water of a portion': '38,5', 'Water left out': '10' });
    shown.click('Kind: Alginate');
    shown.click('Keep');
    expect(saved(shown).materials.at(-1)?.mix).toEqual({ powderG: 16, waterMl: 38.5, lessWater: 0.1 });
  });

  it.each([
    [{}, 'Kind: one of them is wanted.'],
    [{ 'Working time ends': '30' }, 'Working time ends before mixing does.'],
    [{ 'Working time ends': '4000', 'Remove from the mouth': '3600' }, 'Working time ends: 4000 is not between 1 and'],
    [{ 'Powder of a portion': '16' }, 'wanted together, or neither'],
    [{ 'Powder of a portion': '16', 'Water of a portion': '1.234' }, 'at most two decimals'],
    [{ 'Last day of use': '30.6.2027' }, 'a day is wanted'],
  ])('%j: nothing is kept, why is said, and what was written stays', (more, why) => {
    const shown = open(view());
    fill(shown, more);
    if (Object.keys(more).length > 0) shown.click('Kind: Polyether');
    shown.click('Keep');
    expect(formTrouble(shown)).toContain(why);
    expect(shown.page.querySelector<HTMLInputElement>('.entry-form input')?.value).toBe('Our putty');
    expect(shown.actions.askOwn).not.toHaveBeenCalled();
  });

  it('what was taken out can be put back where it stood', () => {
    const shown = open(view());
    const { name } = defaultPractice.materials[1]!;
    shown.click(`Take out ${name}`);
    const without = saved(shown);
    expect(without.materials).toEqual(defaultPractice.materials.toSpliced(1, 1));
    shown.show({ ...anyVisit, place: 'practice', own: view(without) });
    shown.click(`Put back ${name}`);
    expect(saved(shown)).toEqual(defaultPractice);
  });
});

describe('ranges of readings', () => {
  const opened = (practice: Practice = defaultPractice) => {
    const shown = open(view(practice));
    shown.click(`Show ranges of readings (${readingDefs.length})`);
    return shown;
  };

  it('are changed and go back to what they were', () => {
    const shown = opened();
    shown.click('Change Upper ridge width');
    shown.write('Plausible from', '32.5');
    shown.write('Expected to', '68');
    shown.click('Keep');
    const changed = saved(shown);
    expect(changed.ranges).toEqual({ 'upper-width': { plausible: [3250, 8500], expected: [4500, 6800] } });
    shown.show({ ...anyVisit, place: 'practice', own: view(changed) });
    expect(shown.page.querySelectorAll('.setting-ranges .generic-mark')).toHaveLength(1);
    shown.click('Back to the starting range Upper ridge width');
    expect(saved(shown).ranges).toEqual({});
  });

  it('the starting figures written in again are no range of the practice’s own', () => {
    const shown = opened();
    shown.click('Change Upper ridge width');
    shown.click('Keep');
    expect(saved(shown).ranges).toEqual({});
  });

  it.each([
    ['Plausible from', '90', 'lower end of a range must be below'],
    ['Plausible to', '301', 'The instrument reads 0 to 300 mm.'],
    ['Expected from', '20', 'reaches beyond the plausible one'],
    ['Expected to', '45', 'lower end of a range must be below'],
    ['Expected to', 'wide', 'a number is wanted'],
    ['Expected to', '-4', 'it cannot be negative'],
  ])('%s %s is refused: %s', (field, text, why) => {
    const shown = opened();
    shown.click('Change Upper ridge width');
    shown.write(field, text);
    shown.click('Keep');
    expect(formTrouble(shown)).toContain(why);
    expect(shown.actions.askOwn).not.toHaveBeenCalled();
  });
});

describe('wording of cautions', () => {
  const marks = cautionPlaces([visit1]).find((place) => place.key === 'marks')!;
  const opened = (practice: Practice = defaultPractice) => {
    const shown = open(view(practice));
    shown.click('Cautions of visit 1');
    return shown;
  };

  it('is changed for one step or answer, and goes back', () => {
    const shown = opened({ ...defaultPractice, cautions: { 'elsewhere:yes': 'Ours.' } });
    shown.click(`Change ${marks.where}`);
    shown.write('Caution', 'Marks of this visit only.');
    shown.click('Keep');
    const changed = saved(shown);
    expect(changed.cautions).toEqual({ 'elsewhere:yes': 'Ours.', marks: 'Marks of this visit only.' });
    shown.show({ ...anyVisit, place: 'practice', own: view(changed) });
    expect(shown.page.textContent).toContain('Marks of this visit only.');
    shown.click(`Back to the starting words ${marks.where}`);
    expect(saved(shown).cautions).toEqual({ 'elsewhere:yes': 'Ours.' });
  });

  it('own words whose step is in no visit any more are shown, and can go', () => {
    const shown = open(view({ ...defaultPractice, cautions: { 'elsewhere:yes': 'Ours.' } }));
    shown.click('Own words that fit no step now');
    expect(shown.page.textContent).toContain('Ours.');
    shown.click('Back to the starting words elsewhere:yes');
    expect(saved(shown).cautions).toEqual({});
  });

  it.each([
    [' ', 'some words are wanted'],
    ['a'.repeat(141), '141 characters; at most 140'],
  ])('“%s” is refused', (text, why) => {
    const shown = opened();
    shown.click(`Change ${marks.where}`);
    shown.write('Caution', text);
    shown.click('Keep');
    expect(formTrouble(shown)).toContain(why);
    expect(shown.actions.askOwn).not.toHaveBeenCalled();
  });
});

describe('reasons', () => {
  const opened = () => {
    const shown = open(view());
    shown.click(`Show reasons (${defaultPractice.reasons.length})`);
    return shown;
  };

  it('are added with the words they answer to', () => {
    const shown = opened();
    shown.click('Add a reason');
    shown.write('Words on the target', 'Power cut');
    shown.write('Spoken, English', 'Power cut, no power');
    shown.write('Spoken, German', 'stromausfall');
    shown.click('Keep');
    expect(saved(shown).reasons.at(-1)).toEqual({
      id: 'power-cut',
      label: 'Power cut',
      words: { en: ['power cut', 'no power'], de: ['stromausfall'] },
    });
  });

  it.each([
    ['Spoken, German', 'weiter', '“weiter” moves the visit'],
    ['Spoken, English', defaultPractice.reasons[0]!.words.en![0]!, 'Two reasons listen to'],
    ['Words on the target', '', 'some words are wanted'],
    ['Words on the target', 'a'.repeat(37), '37 characters'],
  ])('%s “%s” is refused', (field, text, why) => {
    const shown = opened();
    shown.click('Add a reason');
    shown.write('Words on the target', 'Power cut');
    shown.write(field, text);
    shown.click('Keep');
    expect(formTrouble(shown)).toContain(why);
    expect(shown.actions.askOwn).not.toHaveBeenCalled();
  });

  it('the last one stays, and why is said', () => {
    const [only] = defaultPractice.reasons;
    const shown = open(view({ ...defaultPractice, reasons: [only!] }));
    shown.click('Show reasons (1)');
    shown.click(`Take out ${only!.label}`);
    expect(shown.page.querySelector('.setting-reasons .trouble')?.textContent).toContain('At least one reason');
    expect(shown.actions.askOwn).not.toHaveBeenCalled();
  });
});
