// @vitest-environment happy-dom
import { act } from 'react';
import { afterEach, describe, expect, it } from 'vitest';
import type { AppModel, PreferencesView } from '../../src/app/model.ts';
import { states } from '../../src/screens/preview/states.ts';
import { defaultSettings } from '../../src/stores/stores.ts';
import { mount, type Mounted } from './mount.tsx';

const anyVisit = Object.values(states).find((model) => model.place === 'visit' && model.step?.mode === 'check');

let mounted: Mounted | undefined;
function open(preferences: Partial<PreferencesView> = {}, more: Partial<AppModel> = {}): Mounted {
  if (anyVisit === undefined) throw new Error('the preview has no check');
  const all = { ...defaultSettings, onDevice: 'unknown', ...preferences } as const;
  mounted = mount({ ...anyVisit, place: 'settings', preferences: all, ...more });
  return mounted;
}
afterEach(() => mounted?.close());

const text = (of: Mounted, id: string) => of.page.querySelector(`.setting-${id}`)?.textContent ?? '';
const isChosen = (of: Mounted, name: string) => of.button(name).getAttribute('aria-pressed');

describe('settings', () => {
  it.each([
    ['Deutsch', { language: 'de' }],
    ['Only at readings', { earMode: 'readings' }],
    ['Only while held', { earMode: 'push' }],
    ['Agree that speech may be sent', { mayLeaveDevice: true }],
    ['Pace: more', { rate: 1.1 }],
    ['Pace: less', { rate: 0.9 }],
    ['Volume: less', { volume: 0.9 }],
    ['4 s', { keepAfterMs: 4000 }],
  ])('%s asks for that change and no other', (name, change) => {
    const shown = open();
    shown.click(name);
    expect(shown.actions.setPreferences.mock.calls).toEqual([[change]]);
  });

  it('show what is set', () => {
    const shown = open({ language: 'fr', earMode: 'push', keepAfterMs: 2000, volume: 0.3, speech: false });
    for (const name of ['Français', 'Only while held', '2 s', 'Silent'])
      expect([name, isChosen(shown, name)]).toEqual([name, 'true']);
    for (const name of ['English', 'All the time', 'Off', 'Reads aloud'])
      expect([name, isChosen(shown, name)]).toEqual([name, 'false']);
    expect(text(shown, 'aloud')).toContain('30 %');
  });

  it('at the end of a scale nothing more is asked for', () => {
    const shown = open({ volume: 1, rate: 0.5 });
    shown.click('Volume: more');
    shown.click('Pace: less');
    expect(shown.button('Volume: more').getAttribute('aria-disabled')).toBe('true');
    expect(shown.actions.setPreferences).not.toHaveBeenCalled();
  });

  it('the address word is taken as typed, and taken away', () => {
    const shown = open({ addressWord: 'rim' });
    expect(text(shown, 'address')).toContain('“rim”');
    shown.write('One short word', 'hey rim');
    act(() => shown.page.querySelector('form')?.requestSubmit());
    shown.click('No word');
    expect(shown.actions.setPreferences.mock.calls).toEqual([[{ addressWord: 'hey rim' }], [{ addressWord: '' }]]);
  });

  it('consent says what it means, and can be taken back', () => {
    const shown = open({ mayLeaveDevice: true });
    expect(text(shown, 'consent')).toMatch(/patient may be heard/);
    shown.click('Take the consent back');
    expect(shown.actions.setPreferences.mock.calls).toEqual([[{ mayLeaveDevice: false }]]);
  });

  it.each([
    ['unknown', false],
    ['ready', false],
    ['fetchable', true],
    ['fetching', false],
    ['unavailable', false],
    ['failed', true],
  ] as const)('words on the device, %s: says so, and offers to fetch them only then', (onDevice, offered) => {
    const shown = open({ onDevice, language: 'de' });
    const buttons = [...shown.page.querySelectorAll('.setting-device button')];
    expect(buttons.map((one) => one.textContent)).toEqual(offered ? ['Fetch German to this device'] : []);
    expect(text(shown, 'device').length).toBeGreaterThan(25);
    if (!offered) return;
    shown.click('Fetch German');
    expect(shown.actions.fetchOnDevice).toHaveBeenCalledTimes(1);
  });

  it('the visit that is open keeps its language, and that is said', () => {
    expect(text(open({ language: 'en', visitLanguage: 'de' }), 'language')).toContain('goes on in German');
    mounted?.close();
    expect(text(open({ language: 'de', visitLanguage: 'de' }), 'language')).not.toContain('goes on');
  });

  it('a browser that cannot read aloud is told of, not offered a volume', () => {
    const { speech: _none, ...silent } = anyVisit as AppModel;
    const all = { ...defaultSettings, onDevice: 'unknown' } as const;
    mounted = mount({ ...silent, place: 'settings', preferences: all });
    expect(text(mounted, 'aloud')).toContain('cannot read aloud');
    expect(mounted.page.querySelectorAll('.setting-aloud button')).toHaveLength(0);
  });

  it('lead back to where the person was', () => {
    const shown = open();
    shown.click('Back to the visit');
    expect(shown.actions.go.mock.calls).toEqual([['visit']]);
    shown.close();
    const { step: _none, ...without } = anyVisit as AppModel;
    mounted = mount({ ...without, place: 'settings' });
    mounted.click('Back to the cases');
    expect(mounted.actions.go.mock.calls).toEqual([['cases']]);
  });
});

describe('push-to-talk on the visit’s screen', () => {
  const held = { ...defaultSettings, earMode: 'push', onDevice: 'unknown' } as const;
  function visit(more: Partial<AppModel> = {}): Mounted {
    const ear = { state: 'shut', why: 'Hold this.' } as const;
    return open({}, { place: 'visit', preferences: held, ear, ...more });
  }
  const tell = (target: EventTarget, event: Event): void =>
    act(() => {
      target.dispatchEvent(event);
    });
  const key = (type: 'keydown' | 'keyup', init: KeyboardEventInit) =>
    tell(window, new KeyboardEvent(type, { bubbles: true, cancelable: true, ...init }));
  const pointer = (of: Mounted, type: string) =>
    tell(of.button('Ear shut'), new PointerEvent(type, { bubbles: true, pointerId: 1 }));

  it.each([{ key: 'F8' }, { key: '`', code: 'Backquote' }, { key: 'Dead', code: 'Backquote' }])(
    'by key: %j',
    (init) => {
      const shown = visit();
      key('keydown', init);
      key('keydown', { ...init, repeat: true });
      key('keyup', init);
      expect(shown.actions.talk.mock.calls).toEqual([[true], [false]]);
    },
  );

  it('a window that is left lets go', () => {
    const shown = visit();
    key('keydown', { key: 'F8' });
    tell(window, new Event('blur'));
    expect(shown.actions.talk.mock.calls).toEqual([[true], [false]]);
  });

  it('in the other manners the key is the browser’s own', () => {
    const shown = visit({ preferences: { ...held, earMode: 'always' } });
    key('keydown', { key: 'F8' });
    expect(shown.actions.talk).not.toHaveBeenCalled();
  });

  it('by touch: open at once', () => {
    const shown = visit();
    HTMLElement.prototype.setPointerCapture ??= () => undefined;
    pointer(shown, 'pointerdown');
    expect(shown.actions.talk.mock.calls).toEqual([[true]]);
    expect(shown.actions.setEar).not.toHaveBeenCalled();
  });

  it('leaving the screen while it is open lets go', () => {
    const shown = visit();
    tell(shown.button('Ear shut'), new MouseEvent('click', { bubbles: true, detail: 0 }));
    expect(shown.actions.talk.mock.calls).toEqual([[true]]);
    shown.show({ ...(anyVisit as AppModel), place: 'summary', preferences: held });
    expect(shown.actions.talk.mock.calls).toEqual([[true], [false]]);
  });

  it('asked for consent, a touch opens the question and not the ear', () => {
    const shown = visit({ ear: { state: 'blocked', why: 'It asks.', consent: true } });
    tell(shown.button('Consent wanted'), new PointerEvent('pointerdown', { bubbles: true }));
    shown.click('Consent wanted');
    expect(shown.actions.talk).not.toHaveBeenCalled();
    expect(shown.page.textContent).toContain('May speech be sent off this device?');
  });
});
