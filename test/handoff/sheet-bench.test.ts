// @vitest-environment node
import { describe, expect, it } from 'vitest';
import { sheetText } from '../../src/handoff/sheet-text.ts';
import { answered, before } from './answered.ts';

const TITLE = 'BETWEEN CLINIC AND LABORATORY';

describe('the sheet', () => {
  it('has every entry of the laboratory in order, the one taken back in words, and counts what is not answered', () => {
    const text = sheetText(answered.summary, { timeZone: 'UTC' });
    const part = text.slice(text.indexOf(TITLE), text.indexOf('SIGNED')).trim().split('\n').slice(2);
    expect(part.map((line) => line.replace(/^\* [^,]*, /, ''))).toEqual([
      '* 1 question is not answered.',
      expect.stringMatching(/^MT, visit 1: Done: Trim the casts/),
      'MT, visit 1: Question: How short at the back?',
      'MT, visit 1: Question: Which rim first?',
      'KV, visit 1: Answer: The upper one.',
      expect.stringMatching(/^MT, visit 1: Done: Relieve.* \(taken back\)$/),
      'MT, visit 1: Work returned: trays only',
    ]);
  });

  it('says nothing of it while the laboratory wrote nothing', () => {
    expect(sheetText(before.summary, { timeZone: 'UTC' })).not.toContain(TITLE);
  });
});
