// @vitest-environment happy-dom
import { act } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { AppModel } from '../../src/app/model.ts';
import { MOST_FILE_BYTES } from '../../src/domain/case/fileSize.ts';
import { BenchScreen } from '../../src/screens/bench/BenchScreen.tsx';
import { LargeNumbers } from '../../src/screens/bench/Figures.tsx';
import { benchKey } from '../../src/screens/bench/useBenchKeys.ts';
import { passphraseTrouble } from '../../src/screens/files/SaveCase.tsx';
import { labWords } from '../../src/screens/parts/CaseLine.tsx';
import { states } from '../../src/screens/preview/states.ts';
import { loggingActions } from '../../src/screens/preview/actions.ts';
import { answered } from '../handoff/answered.ts';
import { mount, type Mounted } from './mount.tsx';

const base: AppModel = {
  ...(states['record'] as AppModel),
  place: 'summary',
  summary: answered.summary,
  flags: [],
  ringing: [],
  now: answered.summary.openedAt,
};
const bench = answered.summary.bench;
const noFiles = { busy: false, lines: [] };

let mounted: Mounted | undefined;
afterEach(() => {
  mounted?.close();
  mounted = undefined;
});
const show = (more: Partial<AppModel>): Mounted => (mounted = mount({ ...base, ...more }));

describe('keys at the bench', () => {
  it.each([
    ['PageDown', 0, { do: 'to', place: 1 }],
    ['PageDown', 2, { do: 'to', place: 2 }],
    ['PageUp', 0, { do: 'to', place: 0 }],
    ['ArrowUp', 2, { do: 'to', place: 1 }],
    ['3', 0, { do: 'to', place: 2 }],
    ['4', 0, undefined],
    ['Enter', 1, { do: 'tick' }],
    [' ', 1, { do: 'tick' }],
    ['x', 1, undefined],
  ] as const)('%j at line %i of 3', (key, place, meant) => {
    expect(benchKey(key, place, 3)).toEqual(meant);
  });
});

describe('the bench', () => {
  const markup = renderToStaticMarkup(<BenchScreen model={{ ...base, place: 'bench' }} actions={loggingActions} />);
  const words = markup.replace(/<[^>]+>/g, ' ').replace(/\s+/g, ' ');

  it('has every line of the order with its numbers, the tick with initials, and the tick taken back struck', () => {
    for (const line of bench?.lines ?? [])
      for (const figure of line.figures) expect(words).toContain(`${figure.label} ${figure.digits}`);
    expect(markup.match(/bench-line-done/g)).toHaveLength(1);
    expect(words).toMatch(/Done, MT/);
    expect(markup).toMatch(/<s>Done: Relieve/);
  });

  it('says when the visit is not closed, what is still open, and who overruled it why', () => {
    const shown = (more: object) =>
      renderToStaticMarkup(
        <BenchScreen model={{ ...base, summary: { ...answered.summary, ...more } }} actions={loggingActions} />,
      );
    const [signed] = answered.summary.signed;
    const open = ['Not measured: Measure the closed height.'];
    expect(shown({ open: [] })).not.toContain('How it was handed over');
    expect(shown({ open: [], closedAt: undefined })).toContain('The visit is not closed');
    const overruled = shown({ open, signed: [{ ...signed!, initials: 'KV', overruled: 'Patient had to leave' }] });
    expect(overruled).toContain(`Still open: ${open[0]}`);
    expect(overruled).toContain('Overruled by KV: Patient had to leave');
  });

  it('counts what is left and says whose judgement comes first', () => {
    const left = (bench?.lines.length ?? 0) - 1;
    expect(words).toContain(`${left} of ${left + 1} lines to do`);
    expect(words).toMatch(/Local protocols.*licensed judgement come first/);
  });

  it('shows millimetres inside a sentence large, with their sign, and no other number', () => {
    const text = renderToStaticMarkup(<LargeNumbers text="Visit 2: close by −0.5 mm, 10 min, then 64.5 mm." />);
    expect([...text.matchAll(/bench-digits">([^<]*)</g)].map((found) => found[1])).toEqual(['−0.5', '64.5']);
  });
});

describe('the clinic', () => {
  it('answers an open question with its own initials, and can take the answer back', () => {
    const { actions, write, page, click } = show({});
    write('Answer as', 'Two more.');
    act(() => page.querySelector<HTMLFormElement>('.lab-question-open form')?.requestSubmit());
    const [open] = bench?.questions ?? [];
    const by = answered.summary.clinician;
    expect(actions.askFiles).toHaveBeenCalledWith({
      ask: 'bench',
      by,
      deed: { do: 'answer', question: open?.seq, text: 'Two more.' },
    });
    click('Take back: The upper one.');
    const given = bench?.questions[1]?.answer;
    expect(actions.askFiles).toHaveBeenLastCalledWith({ ask: 'bench', by, deed: { do: 'takeBack', act: given?.act } });
  });

  it('reads on the case line what the laboratory has, visit by visit', () => {
    expect(labWords(bench, 'visit 1')).toBe('1 line done, 1 question open');
    expect(labWords(bench, 'visit 2')).toBe('');
    expect(labWords(undefined, 'visit 1')).toBe('');
  });

  it('sees an open question at the first step of a visit, and at no other', () => {
    const first = states['record'] as AppModel;
    const some = Object.values(states).find((one) => one.step?.mode === 'check')?.step;
    if (some === undefined) throw new Error('no check among the states');
    const step = { ...some, chapter: { ...some.chapter, number: 1 } };
    const at = (place: number, before = 'visit 1') => {
      const caseLine = [{ visit: 1, name: before, title: '', state: 'done' as const }];
      const visit = { ...first, place: 'visit' as const, summary: answered.summary, flags: [], caseLine };
      const page = show({ ...visit, step: { ...step, place } });
      const shown = page.page.querySelector('.lab-bar')?.textContent ?? '';
      page.close();
      mounted = undefined;
      return shown;
    };
    expect(at(1)).toContain('Work returned by MT');
    expect(at(1, 'visit 2')).not.toContain('Work returned');
    expect(at(1)).toContain('How short at the back?');
    expect(at(2)).toBe('');
  });
});

describe('a file to be taken in', () => {
  const choose = (page: HTMLElement, file: File) => {
    const input = page.querySelector<HTMLInputElement>('input[type="file"][aria-label="Case file"]');
    if (input === null) throw new Error('no file input');
    Object.defineProperty(input, 'files', { value: [file], configurable: true });
    return act(async () => {
      input.dispatchEvent(new Event('change', { bubbles: true }));
      await Promise.resolve();
    });
  };

  it('of more than 20 MB is not even read', async () => {
    const { page, actions } = show({ place: 'cases', files: noFiles });
    const file = new File(['x'], 'large.json');
    Object.defineProperty(file, 'size', { value: MOST_FILE_BYTES + 1 });
    const read = vi.spyOn(file, 'arrayBuffer');
    await choose(page, file);
    expect(page.textContent).toContain('larger than 20 MB');
    expect(read).not.toHaveBeenCalled();
    expect(actions.askFiles).not.toHaveBeenCalled();
  });

  it('goes on as it is, with its name', async () => {
    const { page, actions } = show({ place: 'cases', files: noFiles });
    await choose(page, new File(['{}'], 'case.json'));
    await vi.waitFor(() => expect(actions.askFiles).toHaveBeenCalledTimes(1));
    expect(actions.askFiles.mock.calls[0]?.[0]).toMatchObject({
      ask: 'takeIn',
      name: 'case.json',
      bytes: new Uint8Array([123, 125]),
    });
  });

  it('asks for the passphrase of a sealed one, and gives it as typed', () => {
    const { page, actions, write } = show({ place: 'cases', files: { ...noFiles, locked: { name: 'case.json' } } });
    write('Passphrase', 'seven wet gloves');
    act(() => page.querySelector<HTMLFormElement>('form[aria-label="Sealed file"]')?.requestSubmit());
    expect(actions.askFiles).toHaveBeenCalledWith({ ask: 'open', passphrase: 'seven wet gloves' });
  });
});

describe('a passphrase for a file', () => {
  it.each([
    ['short', 'short', /at least 8/],
    ['        ', '        ', /at least 8/],
    ['seven wet gloves', 'seven dry gloves', /not the same/],
  ])('%j and %j are refused', (first, second, why) => {
    expect(passphraseTrouble(first, second)).toMatch(why);
  });
  it('is taken composed and without blanks at its ends, as it is when the file is opened', () => {
    expect(passphraseTrouble('z\u00fcgig-am-Werk', 'zu\u0308gig-am-Werk ')).toBe('');
  });
});

describe('the lab sheet', () => {
  it('asks for the digest while there is none, and shows it with its code once it is there', () => {
    const sheet = show({ place: 'labSheet', files: noFiles });
    expect(sheet.actions.askFiles).toHaveBeenCalledWith({ ask: 'digest' });
    const value = 'ab'.repeat(32);
    sheet.show({
      ...base,
      place: 'labSheet',
      files: { ...noFiles, digest: { value, path: 'M0 0h1v1h-1z', size: 21 } },
    });
    expect(sheet.page.querySelector('.sheet-code code')?.textContent).toBe(value);
    expect(sheet.page.querySelector('.sheet-code path')?.getAttribute('d')).toBe('M0 0h1v1h-1z');
    expect(sheet.actions.askFiles).toHaveBeenCalledTimes(1);
  });

  it('says what is open before hand-over, and who overruled it why', () => {
    const open = ['Not measured: Measure the closed height.'];
    const [signed] = answered.summary.signed;
    const overruled = [{ ...signed!, initials: 'KV', overruled: 'Patient had to leave' }];
    const text = (more: object) => {
      const sheet = show({ place: 'labSheet', files: noFiles, summary: { ...answered.summary, ...more } });
      const shown = sheet.page.querySelector('.before-handover')?.textContent ?? '';
      sheet.close();
      mounted = undefined;
      return shown;
    };
    expect(text({ open: [] })).toMatch(/Nothing is open/);
    expect(text({ open, signed: overruled })).toMatch(/Not measured.*Overruled by KV: Patient had to leave/);
    expect(text({ closedAt: undefined, open, signed: [] })).toMatch(/overrule it at the sign-off/);
  });
});
