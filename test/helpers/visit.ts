/** A session on the real first visit or on the small one, with a clock that stands until it is moved. */
import { openingFacts } from '../../src/app/opening.ts';
import { createSession, type Session } from '../../src/app/session.ts';
import type { Fact } from '../../src/domain/case/facts.ts';
import { defaultPractice } from '../../src/domain/protocol/practice.ts';
import { readingDefs } from '../../src/domain/protocol/readings.ts';
import type { Practice, ReadingDef, VisitProtocol } from '../../src/domain/protocol/types.ts';
import { visit1 } from '../../src/domain/protocol/visit1.ts';
import { summarise } from '../../src/domain/summary/summarise.ts';
import type { Outcome } from '../../src/app/session.ts';
import { smallPractice, smallReadings, smallVisit } from './small-visit.ts';

export const START = Date.parse('2026-03-02T08:00:00Z');

export interface Bench {
  readonly session: Session;
  readonly facts: Fact[];
  at: number;
  wait(ms: number): void;
  say(text: string, alternatives?: readonly { transcript: string; confidence?: number }[]): Outcome;
  key(key: string): Outcome;
  press(intent: string): Outcome;
  type(text: string): Outcome;
  step(): string;
  summary(): ReturnType<typeof summarise>;
}

interface Ground {
  readonly protocol: VisitProtocol;
  readonly readings: readonly ReadingDef[];
  readonly practice: Practice;
}

export const firstVisit: Ground = { protocol: visit1, readings: readingDefs, practice: defaultPractice };
export const small: Ground = { protocol: smallVisit, readings: smallReadings, practice: smallPractice };

/** A fresh case, or one resumed from `facts` (copied, then grown). */
export function bench(ground: Ground = small, facts?: readonly Fact[], day?: (at: number) => string): Bench {
  const head = { case: 'T-1', visit: 1, clinician: 'KV', assistant: 'BR', language: 'en' } as const;
  const log: Fact[] =
    facts === undefined
      ? openingFacts({
          head,
          protocol: ground.protocol,
          practice: ground.practice,
          at: START,
          app: 'test',
          demo: false,
          caseId: 'c1',
        })
      : [...facts];
  const self = { at: log.at(-1)?.at ?? START };
  const session = createSession(
    {
      caseId: 'c1',
      ...ground,
      language: 'en',
      appVersion: 'test',
      now: () => self.at,
      ...(day === undefined ? {} : { day }),
      append: (f) => log.push(...f),
    },
    [...log],
  );
  const hear = (
    source: 'voice' | 'key' | 'touch' | 'keypad',
    text: string,
    alternatives: readonly { transcript: string; confidence?: number }[] = [],
  ) => session.hear({ source, text, alternatives, at: self.at });
  return {
    session,
    facts: log,
    get at() {
      return self.at;
    },
    set at(value) {
      self.at = value;
    },
    wait: (ms) => {
      self.at += ms;
    },
    say: (text, alternatives) => hear('voice', text, alternatives ?? [{ transcript: text }]),
    key: (key) => hear('key', key),
    press: (intent) => hear('touch', intent),
    type: (text) => hear('keypad', text),
    step: () => session.context().step,
    summary: () => summarise(session.view(), { ...ground, now: self.at }),
  };
}

/** The small visit, walked to its repeated reading. */
export function atRestHeight(): Bench {
  const b = bench();
  for (const intent of ['next', 'answer:yes']) b.press(intent);
  b.say('fifty-eight');
  b.say('yes');
  for (const intent of [
    'material:soft-1',
    'start',
    'seated',
    'out',
    'next',
    'answer:keep',
    'start',
    'next',
    'answer:made',
  ])
    b.press(intent);
  return b;
}
