/** The practice's own wording: where it may be put, and what a visit would be left without. */
import { describe, expect, it } from 'vitest';
import { protocols } from '../../../src/domain/protocol/index.ts';
import { cautionPlaces, clocksWithout, withOwnCautions } from '../../../src/domain/protocol/own.ts';
import { defaultPractice } from '../../../src/domain/protocol/practice.ts';
import { readingDefs } from '../../../src/domain/protocol/readings.ts';
import { protocolProblems } from '../../../src/domain/protocol/validate.ts';
import { visit1 } from '../../../src/domain/protocol/visit1.ts';

describe('cautions that may be worded anew', () => {
  const places = cautionPlaces(protocols);

  it('are listed once each, with the step, the answer and the visits they stand in', () => {
    expect(new Set(places.map((place) => place.key)).size).toBe(places.length);
    const marks = places.find((place) => place.key === 'marks');
    expect(marks).toMatchObject({ where: 'Make two marks', visits: [1, 2, 3, 4, 5] });
    const changed = places.find((place) => place.key.includes(':') && place.visits.length > 1);
    expect(changed?.where).toMatch(/[:?] /);
  });

  it('every one of them, worded anew, is what the visit then says; nothing else of it changes', () => {
    const cautions = Object.fromEntries(places.map(({ key }) => [key, `own ${key}`]));
    for (const protocol of protocols) {
      const again = cautionPlaces([withOwnCautions(protocol, { cautions })]);
      for (const { key, words } of again) expect(words).toBe(`own ${key}`);
      expect(again.map(({ key, where }) => [key, where])).toEqual(
        cautionPlaces([protocol]).map(({ key, where }) => [key, where]),
      );
    }
  });
});

describe('a practice without a kind of material', () => {
  const without = (...classes: readonly string[]) => ({
    ...defaultPractice,
    materials: defaultPractice.materials.filter((material) => !classes.includes(material.class)),
  });

  it('may do so while every clock has something left, and its own visits can still be saved', () => {
    expect(clocksWithout(protocols, without('polyether'))).toEqual([]);
    expect(protocolProblems(visit1, readingDefs, without('polyether'))).toEqual([]);
  });

  it('is told which clock would be left with nothing', () => {
    const [first] = clocksWithout(protocols, without('alginate-stiff', 'silicone-putty'));
    expect(first).toMatch(/^No material would be left for “.+”, visit 1\.$/);
    expect(protocolProblems(visit1, readingDefs, without('alginate-stiff', 'silicone-putty'))).not.toEqual([]);
  });

  it('is told the same of disinfectants', () => {
    expect(clocksWithout([visit1], { ...defaultPractice, disinfectants: [] })[0]).toMatch(
      /No disinfectant would be left/,
    );
  });
});
