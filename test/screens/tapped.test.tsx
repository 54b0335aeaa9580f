// @vitest-environment happy-dom
/** Points tapped on the millimetre sheet and places touched on the fitting surfaces go the way of what is typed or said. */
import { act } from 'react';
import { afterEach, describe, expect, it } from 'vitest';
import type { AppModel } from '../../src/app/model.ts';
import { states } from '../../src/screens/preview/states.ts';
import { lowerRegions, upperRegions } from '../../src/domain/protocol/regions.ts';
import { placeOf, SURFACE } from '../../src/screens/drawings/surfaces.ts';
import { mount, type Mounted } from './mount.tsx';

let mounted: Mounted | undefined;
afterEach(() => mounted?.close());

const open = (name: string): { shown: Mounted; model: AppModel } => {
  const model = states[name];
  if (model === undefined) throw new Error(`no state ${name}`);
  mounted = mount(model);
  return { shown: mounted, model };
};

/** A tap at a share of the drawn paper, which is 600 pixels wide here. */
function tap({ page }: Mounted, right: number, down: number): void {
  const paper = page.querySelector('.sheet-tap')!;
  paper.getBoundingClientRect = () => ({ left: 100, top: 50, width: 600, height: 600 }) as DOMRect;
  const at = { clientX: 100 + right * 600, clientY: 50 + down * 600 };
  act(() => {
    paper.dispatchEvent(new MouseEvent('click', { bubbles: true, cancelable: true, detail: 1, ...at }));
  });
}

const digits = ({ page }: Mounted) => page.querySelector('.sheet-digits')?.textContent;
const calls = ({ actions }: Mounted) => [actions.type.mock.calls.flat(), actions.press.mock.calls.flat()];

describe('the millimetre sheet', () => {
  it('a tap marks, the next one in the close-up places it, arrows move it by a tenth', () => {
    const { shown } = open('tracing-first');
    // The whole sheet is 60 mm: 1/6 across 10 mm, 2/3 down 20 mm up.
    tap(shown, 1 / 6, 2 / 3);
    expect(digits(shown)).toBe('10.0 across 20.0 up');
    // The close-up runs from 4 and 14 over 12 mm: 0.55 across is 10.6, on the half 10.5; 0.5 down is 20.
    tap(shown, 0.55, 0.5);
    expect(digits(shown)).toBe('10.5 across 20.0 up');
    shown.click('Left by 0.1 mm');
    shown.press('ArrowUp');
    shown.press('ArrowUp');
    expect(digits(shown)).toBe('10.4 across 20.2 up');
    expect(calls(shown)).toEqual([[], []]);
  });

  it('Keep types the number across and agrees to it; the other one follows at its own step, once', () => {
    const { shown, model } = open('tracing-first');
    tap(shown, 1 / 6, 2 / 3);
    shown.click('Keep both');
    expect(calls(shown)).toEqual([['10'], ['yes']]);
    const up: AppModel = {
      ...model,
      step: {
        ...model.step!,
        step: { ...model.step!.step, id: 'tracing-1-y' },
        reading: { ...model.step!.reading!, id: 'tracing-1-y', label: 'First tracing, apex up' },
      },
    };
    shown.show(up);
    expect(calls(shown)).toEqual([
      ['10', '20'],
      ['yes', 'yes'],
    ]);
    shown.show({ ...up, said: 'again' });
    expect(calls(shown)[0]).toEqual(['10', '20']);
  });

  it('at another step nothing follows: the number is for its own point only', () => {
    const { shown, model } = open('tracing-first');
    tap(shown, 1 / 6, 2 / 3);
    shown.click('Keep both');
    const other = { ...model.step!.reading!, id: 'tracing-2-y', label: 'Second tracing, apex up' };
    shown.show({ ...model, step: { ...model.step!, reading: other } });
    expect(calls(shown)).toEqual([['10'], ['yes']]);
    expect(digits(shown)).toBeUndefined();
  });

  it('gone back to, it says what is kept here', () => {
    const { shown, model } = open('tracing-first');
    const reading = { ...model.step!.reading!, kept: [{ seq: 40, digits: '10.5', suspect: false }] };
    shown.show({ ...model, step: { ...model.step!, reading } });
    expect(shown.page.querySelector('.sheet-side')?.textContent).toContain('Kept here: 10.5 mm');
  });

  it('Enter keeps the mark; with no mark keys mean what they mean everywhere', () => {
    const { shown } = open('tracing-first');
    shown.press('ArrowRight');
    expect(shown.actions.key).toHaveBeenCalledWith('ArrowRight');
    tap(shown, 0.5, 0.5);
    shown.press('Enter');
    expect(calls(shown)).toEqual([['30'], ['yes']]);
  });
});

describe('the fitting surfaces', () => {
  it.each([
    ['upper', upperRegions],
    ['lower', lowerRegions],
  ] as const)('%s: every region has its place, no two targets closer than 12 px', (jaw, regions) => {
    // Targets of 72 px at the smallest scale, 418 of 440 units: two centres 84 px apart in one direction, or they touch.
    const scale = 418 / SURFACE.height;
    const places = regions.map(({ id }) => placeOf(jaw, id)!);
    for (const [i, a] of places.entries()) {
      expect(a, regions[i]?.id).toBeDefined();
      for (const b of places.slice(i + 1)) {
        const apart = Math.max(Math.abs(a.x - b.x), Math.abs(a.y - b.y)) * scale;
        expect(apart, `${regions[i]?.id} at ${a.x}, ${a.y} and ${b.x}, ${b.y}`).toBeGreaterThanOrEqual(84);
      }
      expect(Math.min(a.x, SURFACE.width - a.x, a.y, SURFACE.height - a.y) * scale).toBeGreaterThanOrEqual(36);
    }
  });

  it('touching a region gives the answer that saying it gives, and its number key too', () => {
    const { shown } = open('sore-place');
    shown.click('1, Behind the mylohyoid, right');
    expect(shown.actions.press).toHaveBeenLastCalledWith('answer:lower-mylohyoid-right');
    shown.press('9');
    expect(shown.actions.press).toHaveBeenLastCalledWith('answer:lower-ridge');
  });

  it('what was named before is told in words, and what to look at first stands beside', () => {
    const { shown } = open('sore-place');
    expect(shown.button('12, A frenum, named at visit 4')).toBeDefined();
    const text = shown.page.querySelector('.sore-side')?.textContent ?? '';
    expect(text).toContain('9 Ridge crest');
    expect(text).toContain('9: look at the bite and a sharp edge of bone first (from memory)');
  });
});
