import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseHundredths } from '../../src/domain/measure/length.ts';
import {
  addToDraft,
  deedOf,
  whyNotTaken,
  type KeyDeed,
  type KeyPressed,
  type KeySetting,
} from '../../src/screens/keyboard.ts';

const setting: KeySetting = {
  shown: 'visit:tell:inform:',
  place: 'visit',
  keypadOpen: false,
  draft: '',
  panel: 'none',
  ringing: false,
  choices: [],
};

const pressed = (key: string, more: Partial<KeyPressed> = {}): KeyPressed => ({
  key,
  repeat: false,
  modified: false,
  inTextField: false,
  onTabbedControl: false,
  ...more,
});

const choices = ['answer:yes', 'answer:no'];
const leave: KeyDeed = { do: 'leave' };
const nothing: KeyDeed = { do: 'nothing' };

describe('what a key does', () => {
  const table: readonly (readonly [string, KeyPressed, Partial<KeySetting>, KeyDeed])[] = [
    ['the pedal goes on', pressed('PageDown'), {}, { do: 'key', key: 'PageDown' }],
    ['the pedal goes back', pressed('PageUp'), {}, { do: 'key', key: 'PageUp' }],
    ['Enter is handed on', pressed('Enter'), {}, { do: 'key', key: 'Enter' }],
    ['Space is handed on', pressed(' '), {}, { do: 'key', key: ' ' }],
    ['Backspace is handed on', pressed('Backspace'), {}, { do: 'key', key: 'Backspace' }],
    ['a letter is handed on', pressed('h'), {}, { do: 'key', key: 'h' }],
    ['a digit begins a number', pressed('6'), {}, { do: 'draft', draft: '6' }],
    ['a digit picks an answer', pressed('2'), { choices }, { do: 'press', intent: 'answer:no' }],
    ['a digit beyond the answers does nothing', pressed('3'), { choices }, nothing],
    ['zero picks nothing', pressed('0'), { choices }, nothing],
    ['a pedal held down passes one step only', pressed('PageDown', { repeat: true }), {}, nothing],
    ['a digit held down is one digit', pressed('6', { repeat: true }), {}, nothing],
    ['Tab stays with the browser', pressed('Tab'), {}, leave],
    ['a shortcut stays with the browser', pressed('r', { modified: true }), {}, leave],
    ['typing in a text field stays there', pressed('h', { inTextField: true }), {}, leave],
    ['Enter on a control reached by Tab presses it', pressed('Enter', { onTabbedControl: true }), {}, leave],
    [
      'Page Down on such a control is still the pedal',
      pressed('PageDown', { onTabbedControl: true }),
      {},
      { do: 'key', key: 'PageDown' },
    ],
    ['outside the visit a page scrolls', pressed('PageDown'), { place: 'summary' }, leave],
    [
      'Escape answers what rings, in any place',
      pressed('Escape'),
      { place: 'cases', ringing: true },
      { do: 'silence' },
    ],
    ['Escape is handed on when nothing rings', pressed('Escape'), {}, { do: 'key', key: 'Escape' }],
  ];
  it.each(table)('%s', (_name, key, more, deed) => {
    expect(deedOf(key, { ...setting, ...more })).toEqual(deed);
  });
});

describe('with the keypad open', () => {
  const open = { ...setting, keypadOpen: true, draft: '62' };
  it.each<readonly [string, KeyDeed]>([
    ['5', { do: 'draft', draft: '625' }],
    [',', { do: 'draft', draft: '62.' }],
    ['.', { do: 'draft', draft: '62.' }],
    ['Backspace', { do: 'draft', draft: '6' }],
    ['Enter', { do: 'enter' }],
    ['PageDown', { do: 'enter' }],
    [' ', { do: 'enter' }],
    ['Escape', { do: 'closeKeypad' }],
    ['PageUp', { do: 'closeKeypad' }],
    ['h', leave],
  ])('%s', (key, deed) => {
    expect(deedOf(pressed(key), open)).toEqual(deed);
  });

  it('the pedal does not move on while no digit is typed', () => {
    expect(deedOf(pressed('PageDown'), { ...open, draft: '' })).toEqual(nothing);
  });
});

describe('with a panel open', () => {
  it.each(['PageUp', 'Escape'])('%s closes it', (key) => {
    expect(deedOf(pressed(key), { ...setting, panel: 'flags' })).toEqual({ do: 'closePanel' });
  });
  it.each(['PageDown', 'Enter', ' '])('%s moves nothing behind it', (key) => {
    expect(deedOf(pressed(key), { ...setting, panel: 'note' })).toEqual(nothing);
  });
});

describe('the text on the keypad', () => {
  it('takes a comma as a point, and only one', () => {
    expect(['6', '6', ',', '5', ',', '.'].reduce(addToDraft, '')).toBe('66.5');
  });
  it('begins with a zero when the point comes first', () => {
    expect(addToDraft('', '.')).toBe('0.');
  });
  it('is always a number, but for a point at its end', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...'0123456789.,'), { minLength: 1, maxLength: 12 }), (signs) => {
        const text = signs.reduce(addToDraft, '').replace(/\.$/, '');
        const parsed = parseHundredths(text);
        expect(parsed.ok || parsed.reason === 'tooLarge').toBe(true);
      }),
    );
  });
});

describe('a sign that the keypad cannot take', () => {
  const open = { ...setting, keypadOpen: true };
  it.each([
    ['62.55', '5', 'two decimals'],
    ['6255', '1', 'four digits'],
    ['6.2', '.', 'a point already'],
  ])('“%s” and then “%s”: says why, and what was typed stays', (draft, sign, why) => {
    const deed = deedOf(pressed(sign), { ...open, draft });
    expect(deed).toMatchObject({ do: 'draft', draft });
    expect(deed.do === 'draft' ? deed.why : '').toContain(why);
    expect(whyNotTaken(draft, sign)).toContain(why);
  });

  it('is never swallowed: each sign changes the text or is answered, but a second zero in front', () => {
    const signs = fc.array(fc.constantFrom(...'0123456789.,'), { maxLength: 12 });
    fc.assert(
      fc.property(signs, (typed) => {
        let draft = '';
        for (const sign of typed) {
          const next = addToDraft(draft, sign);
          if (next === draft && !(draft === '0' && sign === '0')) expect(whyNotTaken(draft, sign)).not.toBe('');
          else expect(whyNotTaken(draft, sign)).toBe('');
          draft = next;
        }
      }),
    );
  });
});
