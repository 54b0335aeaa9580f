import { describe, expect, it } from 'vitest';
import { calibrate } from '../../scripts/acoustic/calibrate.ts';
import { CLUES, cluesOf, wordLosses } from '../../scripts/acoustic/clues.ts';
import type { Ear, Path, Way } from '../../scripts/acoustic/ear.ts';
import { scoreOf, textOf } from '../../scripts/acoustic/hearing.ts';
import type { Hearing } from '../../scripts/acoustic/hearing.ts';
import { accepts, choices } from '../../scripts/acoustic/jsgf.ts';
import { judge } from '../../scripts/acoustic/judge.ts';
import type { Heard } from '../../scripts/acoustic/listen.ts';
import { atReading } from '../../scripts/acoustic/moments.ts';
import { alternativesOf } from '../../scripts/acoustic/opinion.ts';
import type { Calibration } from '../../scripts/acoustic/opinion.ts';
import type { Scene } from '../../scripts/acoustic/scenes.ts';
import { weigh } from '../../scripts/acoustic/weigh.ts';
import { grammarOf } from '../../src/interpret/grammar.ts';

/** A path of ten frames a word, the score spread evenly, silence around it. */
function pathOf(sentence: string, score: number): Path {
  const words = sentence.split(' ');
  const parts = words.map((word, i) => [word, 5 + 10 * i, 14 + 10 * i, score / words.length] as const);
  return [['<sil>', 0, 4, 0], ...parts, ['<sil>', 5 + 10 * words.length, 9 + 10 * words.length, 0]];
}

const expectation = atReading('closed-height', []);
const jsgf = grammarOf(expectation);
const kinds = choices(jsgf).map((text, i) => ({ name: `kind ${i}`, accepts: accepts(text) }));
const grammar = { name: 'all', jsgf, accepts: accepts(jsgf), kinds };

/** An ear that knows only these sentences, with how well each fits in both ways. */
function earOf(known: Readonly<Record<string, readonly [cleaned: number, asItIs: number]>>): Ear {
  const best = (way: Way, isOne: (sentence: string) => boolean): Promise<Path> => {
    const place = way === 'cleaned' ? 0 : 1;
    const fitting = Object.entries(known)
      .filter(([sentence]) => isOne(sentence))
      .sort(([, a], [, b]) => b[place] - a[place]);
    const [first] = fitting;
    return Promise.resolve(first === undefined ? [] : pathOf(first[0], first[1][place]));
  };
  const named = new Map([[grammar.name, grammar.accepts], ...kinds.map((k) => [k.name, k.accepts] as const)]);
  return {
    hear: () => Promise.resolve({ frames: 0, loops: [] }),
    with: (way, name) => best(way, named.get(name) ?? (() => false)),
    once: (way, text) => best(way, accepts(text)),
    close: () => undefined,
  };
}

const heardAs = async (known: Parameters<typeof earOf>[0]): Promise<Hearing> => ({
  frames: 60,
  loops: [[['SIL', 0, 59, 0]], [['SIL', 0, 59, 0]]],
  ...(await weigh(earOf(known), grammar, expectation)),
});

describe('a path', () => {
  it('has words without silence and without the number of a pronunciation', () => {
    expect(
      textOf([
        ['<sil>', 0, 3, -1],
        ['sixty(2)', 4, 9, -500],
        ['[NOISE]', 10, 11, -9],
        ['two', 12, 20, -400],
      ]),
    ).toBe('sixty two');
  });
  it('has a score in thousands', () => expect(scoreOf(pathOf('sixty two', -3000))).toBeCloseTo(-3, 9));
  it('loses what the phones alone would have had', () => {
    const loop: Path = [
      ['S', 0, 9, -100],
      ['IH', 10, 29, -600],
    ];
    const path: Path = [
      ['<sil>', 0, 4, -9],
      ['six', 5, 14, -500],
    ];
    expect(wordLosses(path, loop, 30)).toEqual([(-(5 * 10) - 5 * 30 + 500) / 10]);
  });
});

describe('weighing', () => {
  it('finds the nearest sentence of another meaning, and the best command', async () => {
    const { sentences } = await heardAs({
      sixty: [-1000, -1100],
      sixteen: [-1400, -1300],
      'fifty three': [-1200, -1250],
      next: [-5000, -5000],
    });
    expect(sentences.map((s) => s.text)).toEqual(['sixty', 'sixteen', 'next']);
  });
  it('goes on from a better sentence it came upon', async () => {
    const known = { fifteen: [-1000, -1000], fifty: [-950, -950], 'fifty one': [-900, -900] } as const;
    const shy = { ...earOf(known), with: () => Promise.resolve(pathOf('fifteen', -1000)) };
    const { sentences } = await weigh(shy, grammar, expectation);
    expect(sentences[0]?.text).toBe('fifty one');
  });
  it('puts first what fits best in both ways together', async () => {
    const { sentences, agree } = await heardAs({ sixty: [-1000, -2000], fifty: [-1200, -1300] });
    expect(sentences.map((s) => s.text)).toEqual(['fifty', 'sixty']);
    expect(agree).toBe(1);
  });
  it('keeps one sentence for each meaning', async () => {
    const { sentences, agree } = await heardAs({ sixty: [-1000, -1000], 'closed height sixty': [-1100, -1100] });
    expect(sentences.map((s) => s.text)).toEqual(['sixty']);
    expect(agree).toBe(2);
  });
  it('of nothing is nothing', async () => {
    const hearing = await heardAs({});
    expect(hearing.sentences).toEqual([]);
    expect(cluesOf(hearing, expectation)).toBeUndefined();
  });
});

describe('clues', () => {
  const clue = (hearing: Hearing, name: (typeof CLUES)[number]): number | undefined =>
    cluesOf(hearing, expectation)?.[CLUES.indexOf(name)];
  it('tell a number between the halves, another reading and a word apart', async () => {
    const signs = async (sentence: string) => {
      const hearing = await heardAs({ [sentence]: [-1000, -1000] });
      return (['between the halves', 'another reading', 'a word'] as const).map((name) => clue(hearing, name));
    };
    expect(await signs('sixty point five')).toEqual([0, 0, 0]);
    expect(await signs('sixty point four')).toEqual([1, 0, 0]);
    expect(await signs('rest height sixty')).toEqual([0, 1, 0]);
    expect(await signs('next')).toEqual([0, 0, 1]);
  });
  it('see one near rival as little lead and much of a crowd', async () => {
    const near = await heardAs({ sixty: [-1000, -1000], fifty: [-1050, -1050] });
    const far = await heardAs({ sixty: [-1000, -1000], fifty: [-2500, -2500] });
    expect(clue(near, 'lead')).toBeCloseTo(Math.tanh(0.1), 6);
    expect(clue(far, 'lead')).toBeGreaterThan(0.99);
    expect(clue(near, 'crowd')).toBeCloseTo(Math.log(0.001 + Math.exp(-0.25)), 6);
    expect(clue(far, 'crowd')).toBeLessThan(-6);
  });
});

/** A calibration that looks only at the lead. */
const calibration: Calibration = {
  model: {
    means: CLUES.map(() => 0),
    scales: CLUES.map(() => 1),
    weights: CLUES.map((name) => (name === 'lead' ? 4 : 0)),
    bias: -1,
  },
  temperature: 0.5,
  listed: 0.5,
};

describe('alternatives', () => {
  it('have the chance of being right as confidence, and share the rest by what they lose', async () => {
    const hearing = await heardAs({ sixty: [-1000, -1000], fifty: [-1300, -1300], sixteen: [-2000, -2000] });
    const [top, second, third] = alternativesOf({ hearing, scene: { expectation } }, calibration);
    const chance = 1 / (1 + Math.exp(1 - 4 * Math.tanh(2 * 0.3)));
    expect(top).toEqual({ transcript: 'sixty', confidence: Math.round(chance * 1000) / 1000 });
    expect(second?.transcript).toBe('fifty');
    expect((second?.confidence ?? 0) + (third?.confidence ?? 0)).toBeCloseTo((1 - chance) * 0.5, 2);
    expect((second?.confidence ?? 0) / (third?.confidence ?? 1)).toBeGreaterThan(3);
  });
});

const scene = (said: string, value: number): Scene => ({
  id: said,
  group: 'tuning',
  kind: 'reading',
  text: said,
  expectation,
  truth: { kind: 'reading', value, reading: 'closed-height' },
});

describe('judging', () => {
  const heard = async (known: Parameters<typeof earOf>[0]): Promise<Heard> => ({
    scene: scene('sixty', 6000),
    level: 'clean',
    hearing: await heardAs(known),
  });
  it('is sure of what leads far, asks where two are close, and does nothing where nothing was heard', async () => {
    const far = judge(await heard({ sixty: [-1000, -1000], fifty: [-3000, -3000] }), calibration);
    expect(far).toMatchObject({ outcome: 'right', topRight: true });
    const close = judge(await heard({ sixty: [-1000, -1000], fifty: [-1050, -1050] }), calibration);
    expect(close).toMatchObject({ outcome: 'asked', got: { kind: 'ask', candidates: [6000, 5000] } });
    expect(judge(await heard({}), calibration)).toMatchObject({ outcome: 'nothing', topRight: false });
  });
  it('calls a number far ahead and not said wrong', async () => {
    const wrong = judge(await heard({ fifty: [-1000, -1000], sixty: [-3000, -3000] }), calibration);
    expect(wrong).toMatchObject({ outcome: 'wrong', topRight: false });
  });
  it('learns that a long lead is to be believed', async () => {
    const lessons: Heard[] = [];
    for (let n = 0; n < 40; n += 1) {
      const lead = (n % 10) * 100;
      const right = n % 10 > 4 || n % 7 === 0;
      const [first, second] = right ? (['sixty', 'fifty'] as const) : (['fifty', 'sixty'] as const);
      lessons.push(await heard({ [first]: [-1000, -1000], [second]: [-1000 - lead, -1000 - lead] }));
    }
    const learnt = calibrate(lessons);
    const chance = async (lead: number): Promise<number> =>
      alternativesOf(await heard({ sixty: [-1000, -1000], fifty: [-1000 - lead, -1000 - lead] }), learnt)[0]
        ?.confidence ?? 0;
    expect(await chance(900)).toBeGreaterThan(0.8);
    expect(await chance(50)).toBeLessThan(0.5);
    expect(learnt.listed).toBe(1);
  });
});
