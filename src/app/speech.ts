/** Sentences that are read aloud. */
import type { FactBody } from '../domain/case/facts.ts';
import type { Language } from '../domain/protocol/types.ts';
import { speakNumber } from '../interpret/index.ts';
import type { VisitContext } from '../../machines/visit.types.ts';
import { spokenWords } from './spoken-words.ts';
import { readingLabel, type Names } from './wording.ts';

/** Something to read aloud and the language it is written in. */
export interface Spoken {
  readonly speak: string;
  readonly speakIn: Language;
}

/** A reading by its first name in the language of the visit. */
function nameOf(names: Names, reading: string, language: Language): string {
  if (language === 'en') return readingLabel(names, reading);
  return names.readings.find((def) => def.id === reading)?.names[language]?.[0] ?? readingLabel(names, reading);
}

/**
 * The number that waits, read back with its question when it needs an explicit yes; else what is asked for. Titles of steps
 * are in English; readings have names in every language.
 */
export function readBack(context: VisitContext, names: Names, language: Language): Spoken {
  const { pending, candidates, correcting } = context;
  const words = spokenWords[language];
  const here = (speak: string): Spoken => ({ speak, speakIn: language });
  if (candidates !== undefined)
    return here(`${candidates.values.map((v) => speakNumber(v, language)).join(`, ${words.or} `)}?`);
  if (pending !== undefined) {
    const number = speakNumber(pending.value, language);
    return here(pending.certainty === 'sure' ? number : `${number}. ${words.keepIt}`);
  }
  if (correcting !== undefined) return here(`${nameOf(names, correcting.reading, language)}, ${words.newValue}`);
  const step = names.protocol.steps.find(({ id }) => id === context.step);
  if (language !== 'en' && step?.kind === 'reading') return here(nameOf(names, step.reading, language));
  return { speak: step?.title ?? '', speakIn: 'en' };
}

/** Readings of an act, by name and number; what the screen says of it (in English) says more, and is used in English. */
function readingsAloud(facts: readonly FactBody[], names: Names, language: Language): string {
  const { corrected } = spokenWords[language];
  return facts
    .flatMap((body) => {
      if (body.kind !== 'reading') return [];
      const head = body.corrects === undefined ? '' : `${corrected}: `;
      return [`${head}${nameOf(names, body.reading, language)}, ${speakNumber(body.value, language)}`];
    })
    .join('. ');
}

export interface ActSaid {
  readonly facts: readonly FactBody[];
  /** What the screen says of it. */
  readonly said: string;
}

/** What was kept, read aloud. */
export function keptAloud({ facts, said }: ActSaid, names: Names, language: Language): Spoken {
  return { speak: language === 'en' ? said : readingsAloud(facts, names, language), speakIn: language };
}

/** What was undone, read aloud. */
export function undoneAloud({ facts, said }: ActSaid, names: Names, language: Language): Spoken {
  if (language === 'en') return { speak: said, speakIn: 'en' };
  const readings = readingsAloud(facts, names, language);
  const { undone } = spokenWords[language];
  return { speak: readings === '' ? undone : `${undone}: ${readings}`, speakIn: language };
}
