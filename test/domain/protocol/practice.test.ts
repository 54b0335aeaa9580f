import { describe, expect, it } from 'vitest';
import { defaultPractice } from '../../../src/domain/protocol/practice.ts';
import type { Language } from '../../../src/domain/protocol/types.ts';
import { namesIn } from './texts.ts';

const LANGUAGES: readonly Language[] = ['en', 'de', 'es', 'fr'];

describe.each(defaultPractice.materials.map((material) => [material.id, material] as const))('%s', (_id, material) => {
  it('is mixed before it must be seated, and seated before it may come out', () => {
    expect(material.mixS).toBeGreaterThan(0);
    expect(material.workingS).toBeGreaterThan(material.mixS);
    expect(material.removeS).toBeGreaterThan(material.workingS);
    expect(material.pourWithinMin).toBeGreaterThanOrEqual(material.pourFromMin);
  });

  it('is marked generic, with its source, and names no maker', () => {
    expect(material.generic).toBe(true);
    expect(material.source.length).toBeGreaterThan(20);
    expect(namesIn(material.name)).toEqual([]);
  });
});

// Handbook ranges from memory, seconds from the start of mixing: a generic clock takes the short end of working and the
// long end of setting.
it.each([
  ['alginate-fast', 75, 180],
  ['alginate-regular', 120, 270],
  ['silicone-medium-light', 120, 360],
  ['polyether', 120, 390],
  ['zinc-oxide-eugenol', 120, 600],
])('%s errs on the safe side of the handbook range', (id, working, remove) => {
  const material = defaultPractice.materials.find((entry) => entry.id === id);
  expect(material).toMatchObject({ workingS: working, removeS: remove });
});

// Walker, Angle Orthod 2010;80:1110 and a 4-hour study (text seen): conventional alginate usable up to 30 min.
it('gives alginate 30 minutes to be poured, from the moment it is out', () => {
  const alginates = defaultPractice.materials.filter((material) => material.class.startsWith('alginate'));
  expect(alginates.length).toBeGreaterThanOrEqual(3);
  expect(alginates.every((material) => material.pourWithinMin === 30 && material.pourFromMin === 0)).toBe(true);
});

it('never leaves alginate in a disinfectant for more than ten minutes', () => {
  expect(defaultPractice.disinfectants.length).toBeGreaterThan(0);
  expect(defaultPractice.disinfectants.every((agent) => agent.minutes > 0 && agent.minutes <= 10)).toBe(true);
});

// Worked examples: ridge 58 or 62 mm and 5 mm clearance each side want 68 and 72 mm.
it.each([
  ['upper', 58, 72],
  ['lower', 62, 72],
  ['upper', 45, 60],
  ['lower', 70, 84],
] as const)('has an %s tray for a ridge of %d mm', (arch, ridge, wanted) => {
  const needed = ridge * 100 + 2 * defaultPractice.trayClearance;
  const fitting = defaultPractice.trays.filter((tray) => tray.arch === arch && tray.innerWidth >= needed);
  expect(Math.min(...fitting.map((tray) => tray.innerWidth))).toBe(wanted * 100);
});

it('gives every reason a word in four languages, shared with no other reason', () => {
  for (const language of LANGUAGES) {
    const words = defaultPractice.reasons.flatMap((reason) => reason.words[language] ?? []);
    expect(defaultPractice.reasons.every((reason) => (reason.words[language] ?? []).length > 0)).toBe(true);
    expect(words.filter((word, index) => words.indexOf(word) !== index)).toEqual([]);
  }
});

it('shares no id', () => {
  for (const list of [
    defaultPractice.materials,
    defaultPractice.disinfectants,
    defaultPractice.trays,
    defaultPractice.reasons,
  ]) {
    const ids = list.map((entry) => entry.id);
    expect(new Set(ids).size).toBe(ids.length);
  }
});
