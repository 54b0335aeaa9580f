import { describe, expect, it } from 'vitest';
import { asking, by, REST } from './heard.ts';

describe('keypad', () => {
  it.each([
    ['62.5', 6250],
    ['62,5', 6250],
    ['62.75', 6275],
  ])('%s is kept as typed', (text, value) => {
    expect(by('keypad', text)).toMatchObject({ kind: 'reading', value, certainty: 'sure' });
  });
  it('asks for a yes outside the plausible range and says why', () => {
    expect(by('keypad', '162.5')).toMatchObject({ kind: 'reading', certainty: 'check', why: ['outside 30–85 mm'] });
  });
  it.each([
    ['', 'notANumber'],
    ['abc', 'notANumber'],
    ['-5', 'negative'],
    ['62.555', 'tooFine'],
    ['5000', 'outOfRange'],
    ['6e1', 'notANumber'],
    ['a '.repeat(5000), 'notANumber'],
  ])('%j is refused as %s', (text, reason) => {
    expect(by('keypad', text)).toMatchObject({ kind: 'unclear', reason });
  });
  it('files a named reading out of turn', () => {
    expect(by('keypad', 'rest height 62.5')).toMatchObject({ kind: 'reading', value: 6250, reading: REST.id });
  });
});

describe('keys and pedal', () => {
  it.each([
    ['PageDown', 'next'],
    ['ArrowRight', 'next'],
    ['PageUp', 'back'],
    ['ArrowLeft', 'back'],
    ['Enter', 'next'],
    [' ', 'next'],
    ['Backspace', 'undo'],
    ['h', 'hold'],
    ['y', 'yes'],
    ['N', 'no'],
  ])('%s means %s', (key, command) => {
    expect(by('key', key)).toMatchObject({ kind: 'command', command });
  });
  it('Enter says yes to a shown value', () => {
    expect(by('key', 'Enter', asking({ mode: 'confirm', pending: 6250 }))).toMatchObject({ command: 'yes' });
  });
  it('Enter and Space take the next step of a clock', () => {
    expect(by('key', ' ', asking({ mode: 'clock', commands: ['seated', 'hold'] }))).toMatchObject({
      command: 'seated',
    });
  });
  it('h carries on when held', () => {
    expect(by('key', 'h', asking({ mode: 'held' }))).toMatchObject({ command: 'carryOn' });
  });
  it('what is not legal now is said to be so', () => {
    expect(by('key', 'PageDown', asking({ commands: ['back'] }))).toMatchObject({ kind: 'unclear', reason: 'notNow' });
  });
  it.each(['a', 'Tab', 'F5', '5', 'Unidentified', ''])('%j does nothing', (key) => {
    expect(by('key', key).kind).toBe('none');
  });
});

describe('touch', () => {
  const check = asking({
    mode: 'check',
    answers: [
      { id: 'high', words: ['high'] },
      { id: 'yes', words: [] },
    ],
  });
  it('answers, commands, choices and notes', () => {
    expect(by('touch', 'answer:high', check)).toMatchObject({ kind: 'answer', answer: 'high' });
    expect(by('touch', 'yes', check)).toMatchObject({ kind: 'answer', answer: 'yes' });
    expect(by('touch', 'next', check)).toMatchObject({ kind: 'command', command: 'next' });
    expect(by('touch', 'choose:5000')).toMatchObject({ kind: 'reading', value: 5000, certainty: 'sure' });
    expect(by('touch', 'note:Ulcer: left pad')).toMatchObject({ kind: 'note', note: 'Ulcer: left pad' });
  });
  it.each(['answer:low', 'choose:', 'choose:-5', 'choose:1e3', 'note:', 'explode', ''])('%j is refused', (intent) => {
    expect(by('touch', intent, check).kind).toBe('unclear');
  });
});
