// @vitest-environment happy-dom
import { act } from 'react';
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { OwnView } from '../../src/app/own.types.ts';
import { protocolDifference } from '../../src/domain/protocol/difference.ts';
import { dropStep } from '../../src/domain/protocol/edit.ts';
import { lostBy } from '../../src/domain/protocol/needs.ts';
import { cautionPlaces } from '../../src/domain/protocol/own.ts';
import { defaultPractice } from '../../src/domain/protocol/practice.ts';
import { readingDefs } from '../../src/domain/protocol/readings.ts';
import { visit1 } from '../../src/domain/protocol/visit1.ts';
import type { Practice } from '../../src/domain/protocol/types.ts';
import { firstWhy, readDay, readMm, readWhole } from '../../src/screens/practice/fields.ts';
import { fetchPractice } from '../../src/screens/practice/Lazy.tsx';
import { states } from '../../src/screens/preview/states.ts';
import { mount, type Mounted } from './mount.tsx';

const anyVisit = Object.values(states).find((model) => model.place === 'visit' && model.step?.mode === 'check')!;
const visits = [{ visit: 1, title: visit1.title, version: 'visit-1, version 1' }];
const view = (practice: Practice = defaultPractice): OwnView => ({
  practice,
  visits,
  cautions: cautionPlaces([visit1]),
  readings: readingDefs,
  taken: { en: ['next'], de: ['weiter'], es: [], fr: [] },
});

beforeAll(() => fetchPractice());

let mounted: Mounted | undefined;
function open(place: 'practice' | 'protocol', own: OwnView | undefined): Mounted {
  mounted = mount({ ...anyVisit, place, ...(own === undefined ? {} : { own }) });
  return mounted;
}
afterEach(() => mounted?.close());

const saved = (shown: Mounted): Practice => {
  const [request] = shown.actions.askOwn.mock.lastCall as [{ ask: string; practice: Practice }];
  expect(request.ask).toBe('savePractice');
  return request.practice;
};

describe('the practice', () => {
  it('says so while it is being read', () => {
    expect(open('practice', undefined).page.textContent).toContain('Being read');
  });

  it('marks every starting figure as generic, and no figure of the leaflet', () => {
    const [first, ...others] = defaultPractice.materials;
    const shown = open('practice', view({ ...defaultPractice, materials: [{ ...first!, generic: false }, ...others] }));
    const marks = shown.page.querySelectorAll('.setting-materials .generic-mark');
    expect(marks).toHaveLength(others.length);
    expect(marks[0]?.textContent).toBe('generic – replace with the leaflet’s figures');
  });

  it('takes lot, day and a figure of the leaflet; the mark goes with the figure', () => {
    const shown = open('practice', view());
    const { name } = defaultPractice.materials[0]!;
    shown.click(`Change ${name}`);
    shown.write('Lot', 'A 12');
    shown.write('Last day of use', '2027-03-31');
    shown.click('Keep');
    expect(saved(shown).materials[0]).toEqual({ ...defaultPractice.materials[0], lot: 'A 12', expires: '2027-03-31' });
    shown.click(`Change ${name}`);
    shown.write('Working time ends', '100');
    shown.click('Keep');
    expect(saved(shown).materials[0]).toMatchObject({ workingS: 100, generic: false });
  });

  it.each([
    ['Last day of use', '31.3.2027', 'a day is wanted'],
    ['Working time ends', '2 min', 'a whole number is wanted'],
    ['Name', ' ', 'some words are wanted'],
  ])('keeps nothing when %s is “%s”, and says why', (field, text, why) => {
    const shown = open('practice', view());
    shown.click(`Change ${defaultPractice.materials[0]!.name}`);
    shown.write(field, text);
    shown.click('Keep');
    expect(shown.page.querySelector('.entry-form .trouble')?.textContent).toContain(why);
    expect(shown.actions.askOwn).not.toHaveBeenCalled();
  });

  it('adds a tray, a disinfectant and a person, and takes one out', () => {
    const shown = open('practice', view());
    shown.click('Add a tray');
    shown.write('Name', 'Upper wide');
    shown.click('Jaw: upper');
    shown.write('Inner width', '81,5');
    shown.click('Keep');
    expect(saved(shown).trays.at(-1)).toEqual({
      id: 'upper-wide',
      label: 'Upper wide',
      arch: 'upper',
      innerWidth: 8150,
    });
    shown.click('Add a disinfectant');
    shown.write('Name', 'Ours');
    shown.write('Minutes', '5');
    shown.click('Keep');
    expect(saved(shown).disinfectants.at(-1)).toMatchObject({ id: 'ours', minutes: 5, generic: false });
    shown.click('Add a person');
    shown.write('Initials', 'KV');
    shown.click('Role: clinician');
    shown.click('Keep');
    expect(saved(shown).people).toEqual([{ initials: 'KV', role: 'clinician' }]);
    shown.click(`Take out ${defaultPractice.trays[0]!.label}`);
    expect(saved(shown).trays).toEqual(defaultPractice.trays.slice(1));
  });

  it('changes the conventions, with Enter as well as with the target', () => {
    const shown = open('practice', view());
    shown.click('Record at rest height');
    expect(saved(shown).recordAt).toBe('rest');
    shown.click('Change the lengths');
    shown.write('Rest space aimed at', '2.5');
    const field = shown.page.querySelector<HTMLInputElement>('.entry-form input')!;
    act(() => void field.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true })));
    expect(saved(shown)).toEqual({ ...defaultPractice, restSpaceTarget: 250 });
  });

  it('leads to a visit, to a file, and back', () => {
    const shown = open('practice', view());
    shown.click('Visit 1');
    shown.click('Save the settings as a file');
    expect(shown.actions.askOwn.mock.calls).toEqual([[{ ask: 'edit', visit: 1 }], [{ ask: 'exportPractice' }]]);
    shown.click('Back to the settings');
    expect(shown.actions.go).toHaveBeenCalledWith('settings');
  });
});

function editing(draft = visit1, problems: readonly string[] = []): OwnView {
  const [difference, warnings] = [protocolDifference(visit1, draft), lostBy(visit1, draft)];
  return { ...view(), protocol: { before: visit1, draft, version: 2, problems, warnings, difference } };
}

describe('a visit being edited', () => {
  const step = visit1.steps[3]!;

  it('shows every step; the one chosen can be moved, dropped, reworded and followed by another', () => {
    const shown = open('protocol', editing());
    expect(shown.page.querySelectorAll('.protocol-steps > li')).toHaveLength(visit1.steps.length);
    shown.click(`4. ${step.title}`);
    for (const name of ['Up', 'Down', 'Drop']) shown.click(name);
    shown.click('Reword');
    shown.write('Line 1', 'In our words');
    shown.click('Keep');
    shown.click('Add after');
    shown.write('Title', 'Warm the tray');
    shown.click('Keep');
    const old = { title: step.title, lines: ['In our words', ...step.lines.slice(1), '', '', ''].slice(0, 4) };
    expect(shown.actions.askOwn.mock.calls.map(([request]) => request)).toEqual([
      { ask: 'move', step: step.id, by: -1 },
      { ask: 'move', step: step.id, by: 1 },
      { ask: 'drop', step: step.id },
      { ask: 'reword', step: step.id, wording: { ...old, caution: step.caution ?? '' } },
      { ask: 'add', step: step.id, wording: { title: 'Warm the tray', lines: ['', '', '', ''], caution: '' } },
    ]);
  });

  it('says what is changed and what it costs before it is saved', () => {
    const shown = open('protocol', editing(dropStep(visit1, 'closed-height')));
    const said = shown.page.querySelector('.changes')?.textContent ?? '';
    expect(said).toContain('Dropped: ');
    expect(said).toContain('the summary lacks “rest space”');
    shown.click('Save as version 2');
    shown.click('Give up the changes');
    shown.click('Go on working');
    shown.click('Give up the changes');
    expect(shown.actions.askOwn).toHaveBeenCalledTimes(1);
    shown.click('Yes, give up');
    expect(shown.actions.askOwn.mock.calls).toEqual([[{ ask: 'saveProtocol' }], [{ ask: 'dropChanges' }]]);
  });

  it('marks saving as refused while the draft cannot be used', () => {
    const shown = open('protocol', editing(dropStep(visit1, 'signoff-clinician'), ['steps: no end.']));
    expect(shown.button('Save as version 2').getAttribute('aria-disabled')).toBe('true');
    expect(shown.page.textContent).toContain('steps: no end.');
  });
});

describe('fields are read strictly', () => {
  it.each([
    [readMm('5.5', 'x'), true],
    [readMm('5,25', 'x'), true],
    [readMm('1.234', 'x'), false],
    [readMm('-5', 'x'), false],
    [readWhole('120', 'x'), true],
    [readWhole('1e3', 'x'), false],
    [readWhole('', 'x'), false],
    [readDay('', 'x'), true],
    [readDay('2026-02-29', 'x'), false],
  ])('%j: %s', (read, ok) => {
    expect(read.ok).toBe(ok);
    expect(firstWhy([read]) === undefined).toBe(ok);
  });
});

describe('the next visit of a case', () => {
  it('may be opened with other people than the last one', () => {
    const model = states['closed'] ?? anyVisit;
    const caseLine = [{ visit: 2, name: 'visit 2', title: 'x', state: 'next' }] as const;
    const shown = mount({ ...model, place: 'summary', caseLine });
    mounted = shown;
    shown.click('Other initials');
    shown.write('Clinician', 'LM');
    shown.click('Open with these');
    expect(shown.actions.openVisit).toHaveBeenCalledWith({ visit: 2, clinician: 'LM', assistant: 'AS' });
    shown.click('Other initials');
    shown.write('Assistant', ' ');
    shown.click('Open with these');
    expect(shown.actions.openVisit).toHaveBeenCalledTimes(1);
    expect(shown.page.textContent).toContain('initials of clinician and assistant are wanted');
  });
});
