// @vitest-environment happy-dom
/** Who works: initials of the practice as targets wherever a visit is begun or signed, and still free to type. */
import { afterEach, describe, expect, it } from 'vitest';
import type { CaseVisit } from '../../src/app/model.ts';
import type { Person } from '../../src/domain/protocol/types.ts';
import { states } from '../../src/screens/preview/states.ts';
import { mount, type Mounted } from './mount.tsx';

const people: readonly Person[] = [
  { initials: 'KV', role: 'clinician' },
  { initials: 'LM', role: 'clinician' },
  { initials: 'BR', role: 'assistant' },
];
const cases = states['cases']!;
const closed = states['closed']!;

let mounted: Mounted | undefined;
afterEach(() => mounted?.close());
const show = (model: Parameters<typeof mount>[0]): Mounted => (mounted = mount(model));

describe('a new case', () => {
  const opened = () => {
    const shown = show({ ...cases, people });
    shown.click('New case');
    shown.write('Case code', 'K-1');
    return shown;
  };

  it('is begun with two targets', () => {
    const shown = opened();
    shown.click('Clinician LM');
    shown.click('Assistant BR');
    shown.click('Begin visit 1');
    expect(shown.actions.newCase).toHaveBeenCalledWith({ code: 'K-1', clinician: 'LM', assistant: 'BR', demo: false });
  });

  it('takes initials that are on no list', () => {
    const shown = opened();
    shown.click('Clinician LM');
    shown.write('Clinician', 'ZZ');
    shown.write('Assistant', 'YY');
    expect(shown.button('Clinician LM').getAttribute('aria-pressed')).toBe('false');
    shown.click('Begin visit 1');
    expect(shown.actions.newCase).toHaveBeenCalledWith({ code: 'K-1', clinician: 'ZZ', assistant: 'YY', demo: false });
  });

  it('offers each role its own people, and nobody where the practice has no list', () => {
    const shown = opened();
    expect(() => shown.button('Assistant LM')).toThrow('no target named');
    shown.close();
    const bare = show({ ...cases, people: [] });
    bare.click('New case');
    expect(bare.page.querySelectorAll('.who .target')).toHaveLength(0);
  });

  it('says what is out of scope before anything is begun', () => {
    const text = opened().page.querySelector('.new-case')?.textContent ?? '';
    expect(text).toContain('Not for relines, copy dentures or immediate dentures');
  });
});

const visit = (more: Partial<CaseVisit>): CaseVisit => ({
  visit: 2,
  name: 'visit 2',
  title: 'x',
  state: 'next',
  ...more,
});

describe('the next visit', () => {
  it('is opened by others with targets; whoever is on no list is typed', () => {
    const shown = show({ ...closed, place: 'summary', people, caseLine: [visit({})] });
    shown.click('Other initials');
    shown.click('Clinician LM');
    shown.click('Open with these');
    expect(shown.actions.openVisit).toHaveBeenCalledWith({ visit: 2, clinician: 'LM', assistant: 'AS' });
    shown.click('Other initials');
    shown.write('Assistant', 'YY');
    shown.click('Open with these');
    expect(shown.actions.openVisit).toHaveBeenLastCalledWith({ visit: 2, clinician: 'CL', assistant: 'YY' });
  });

  it('the case line names who worked, and says where another clinician did', () => {
    const caseLine = [
      visit({ visit: 1, name: 'visit 1', state: 'done', people: 'KV, BR' }),
      visit({ state: 'now', people: 'LM, BR', otherClinician: true }),
    ];
    const shown = show({ ...closed, place: 'summary', people, caseLine });
    const texts = [...shown.page.querySelectorAll('.case-visit')].map((one) => one.textContent);
    expect(texts[0]).toContain('KV, BR');
    expect(texts[0]).not.toContain('another clinician');
    expect(texts[1]).toContain('LM, BR');
    expect(texts[1]).toContain('another clinician');
  });
});

describe('signing', () => {
  it('offers the others of that role as well', () => {
    const shown = show({ ...states['signoff-clear']!, people: [...people, { initials: 'QA', role: 'assistant' }] });
    shown.click('Sign as QA');
    expect(shown.actions.press).toHaveBeenCalledWith('sign:QA');
  });
});
