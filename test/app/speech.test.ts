import { beforeAll, describe, expect, it } from 'vitest';
import { readBack } from '../../src/app/speech.ts';
import { readingDefs } from '../../src/domain/protocol/readings.ts';
import { visit1 } from '../../src/domain/protocol/visit1.ts';
import { loadLanguage } from '../../src/interpret/index.ts';
import type { VisitContext } from '../../machines/visit.types.ts';

const at = (step: string): VisitContext => ({ step }) as VisitContext;
const names = { protocol: visit1, readings: readingDefs };

beforeAll(async () => {
  await Promise.all((['de', 'es', 'fr'] as const).map((language) => loadLanguage(language)));
});

describe('said again with no number waiting', () => {
  it.each([
    ['de', 'breite oben'],
    ['es', 'ancho superior'],
    ['fr', 'largeur haute'],
  ] as const)('a reading is called by its name in the language of the visit: %s', (language, text) => {
    expect(readBack(at('upper-width'), names, language)).toEqual({ speak: text, speakIn: language });
  });
  it('a title is read in the language it is written in', () => {
    const { title } = visit1.steps.find((step) => step.kind === 'inform')!;
    const { id } = visit1.steps.find((step) => step.kind === 'inform')!;
    expect(readBack(at(id), names, 'de')).toEqual({ speak: title, speakIn: 'en' });
    expect(readBack(at('upper-width'), names, 'en')).toEqual({
      speak: visit1.steps.find((step) => step.id === 'upper-width')!.title,
      speakIn: 'en',
    });
  });
});
