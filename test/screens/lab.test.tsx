// @vitest-environment happy-dom
/** What the laboratory has stands on the list and the case line; a day is agreed with large targets. */
import { afterEach, describe, expect, it } from 'vitest';
import { defaultPractice } from '../../src/domain/protocol/practice.ts';
import { fetchPractice } from '../../src/screens/practice/Lazy.tsx';
import { own } from '../../src/screens/preview/practice.ts';
import { NOW } from '../../src/screens/preview/clocks.ts';
import { states } from '../../src/screens/preview/states.ts';
import { mount, type Mounted } from './mount.tsx';

const cases = states['cases']!;
const closed = { ...states['closed']!, place: 'summary' } as const;
const labDue = { order: 2, what: 'custom trays', day: '2026-05-19', agreed: false };

let mounted: Mounted | undefined;
afterEach(() => mounted?.close());
const show = (model: Parameters<typeof mount>[0]): Mounted => (mounted = mount(model));
const row = (stands: { text: string; due?: string }) =>
  show({ ...cases, cases: [{ ...cases.cases[0]!, stands }] }).page.querySelector('.case-list')?.textContent ?? '';

describe('the list of cases', () => {
  // The states of the preview stand on Tuesday the 12th of May 2026.
  it.each([
    [{ text: 'lab has: custom trays', due: '2026-05-14' }, 'lab has: custom trays, due Thu 14 May'],
    [{ text: 'lab has: custom trays', due: '2026-05-12' }, 'lab has: custom trays, due Tue 12 May'],
    [{ text: 'lab has: custom trays', due: '2026-05-11' }, 'lab has: custom trays, was due Mon 11 May'],
    [{ text: 'work returned: custom trays' }, 'work returned: custom trays'],
  ])('%j', (stands, words) => {
    expect(new Date(NOW).toISOString().slice(0, 10)).toBe('2026-05-12');
    expect(row(stands)).toContain(words);
  });
});

describe('the day agreed with the laboratory', () => {
  it('is moved a day or a week at a time and agreed with one target', () => {
    const shown = show({ ...closed, labDue });
    expect(shown.page.querySelector('.lab-due')?.textContent).toContain('custom trays');
    shown.click('A day later');
    shown.click('A week later');
    shown.click('A day earlier');
    shown.click('A day later');
    shown.click('Agree Wed 27 May');
    expect(shown.actions.press).toHaveBeenCalledWith('labDue:2026-05-27');
  });

  it('never goes before today', () => {
    const shown = show({ ...closed, labDue: { ...labDue, day: '2026-05-12' } });
    expect(shown.button('A day earlier').getAttribute('aria-disabled')).toBe('true');
    shown.click('A day earlier');
    shown.click('Agree Tue 12 May');
    expect(shown.actions.press).toHaveBeenCalledWith('labDue:2026-05-12');
  });

  it('says whether it was agreed or only counted, and by what', () => {
    const text = (agreed: boolean) => {
      const shown = show({ ...closed, labDue: { ...labDue, agreed } });
      const found = shown.page.querySelector('.lab-due')?.textContent ?? '';
      shown.close();
      return found;
    };
    expect(text(true)).toContain('agreed');
    expect(text(false)).toContain('by the practice’s days');
    mounted = undefined;
  });

  it('is agreed with one target where the work is handed over, and nowhere without an order', () => {
    const shown = show({ ...states['signoff-clear']!, labDue });
    shown.click('Agree: work back Tue 19 May');
    expect(shown.actions.press).toHaveBeenCalledWith('labDue:2026-05-19');
    shown.show({ ...states['signoff-clear']!, labDue: { ...labDue, agreed: true } });
    expect(shown.button('Work back Tue 19 May, agreed').getAttribute('aria-pressed')).toBe('true');
    shown.close();
    const { labDue: _none, ...without } = closed;
    expect(show(without).page.querySelectorAll('.lab-due')).toHaveLength(0);
  });
});

describe('the case line', () => {
  it('says what the laboratory has of each visit, and marks what is late in words', () => {
    const caseLine = [
      {
        visit: 1,
        name: 'visit 1',
        title: 'x',
        state: 'done',
        lab: { text: 'lab has: custom trays, was due Mon 11 May', late: true },
      },
      { visit: 5, name: 'visit 5', title: 'x', state: 'later', lab: { text: 'first review: Wed 13 May', late: false } },
    ] as const;
    const shown = show({ ...closed, place: 'summary', caseLine });
    const lines = [...shown.page.querySelectorAll('.case-visit-lab')].map((one) => [one.textContent, one.className]);
    expect(lines.map(([text]) => text)).toEqual([
      'lab has: custom trays, was due Mon 11 May',
      'first review: Wed 13 May',
    ]);
    expect(lines[0]?.[1]).toContain('late');
    expect(lines[1]?.[1]).not.toContain('late');
  });
});

describe('the practice’s days', () => {
  it('are said to be common practice until they are set, and are set like the lengths', async () => {
    await fetchPractice();
    const shown = show({ ...closed, place: 'practice', own: { ...own, practice: defaultPractice } });
    const section = shown.page.querySelector('.setting-lab-days');
    expect(section?.textContent).toContain('common practice, no source');
    shown.click('Change the days');
    shown.write('Custom trays', '5');
    shown.click('Keep');
    expect(shown.actions.askOwn).toHaveBeenCalledWith({
      ask: 'savePractice',
      practice: { ...defaultPractice, labDays: { customTrays: 5, setUp: 7, finish: 10 } },
    });
    shown.click('Change the days');
    shown.write('Custom trays', '500');
    shown.click('Keep');
    expect(shown.page.querySelector('.entry-form .trouble')?.textContent).toContain(
      '500 is not between 0 and 120 days',
    );
  });
});
