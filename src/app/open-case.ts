/** An open case as the runtime sees it. What runs a visit is fetched when the first case is opened, not before. */
import type { Language, Practice, VisitProtocol } from '../domain/protocol/types.ts';
import type { Deadline } from '../domain/summary/clocks.ts';
import type { CaseRow } from '../storage/types.ts';
import type { AppModel } from './model.ts';
import { plainWords } from './plain-words.ts';
import type { Session } from './session.ts';
import type { WaitingPort } from './waiting.ts';

export interface OpenCase {
  readonly id: string;
  readonly session: Session;
  /** The language the visit was opened in, which it keeps. */
  readonly language: Language;
  /** Whether that language's words could be fetched; without them only figures are understood. */
  readonly hasWords: boolean;
  /** What the screens are given of this case at a time. */
  parts(now: number): Partial<AppModel>;
  /** What the ear must know: whether a number is asked for, whether one waits for its yes. */
  listensFor(): { readonly reading: boolean; readonly waits: boolean };
  /** Words likely to be said now. */
  phrases(address: string): readonly string[];
  /** Clocks that run and what rings of them: little work, for cases that are followed without being open. */
  running(now: number): Pick<AppModel, 'clocks' | 'ringing'>;
  /** What still has to ring, without what has rung. */
  deadlines(now: number): readonly Deadline[];
  /** The case's row in the list, as of its latest fact. */
  row(): CaseRow;
}

/** `recovered`: what had to be mended on the disk first, in a sentence. */
export type Opened =
  | { readonly ok: true; readonly open: OpenCase; readonly recovered?: string }
  | { readonly ok: false; readonly text: string };

export interface NewCase {
  readonly id: string;
  readonly code: string;
  readonly clinician: string;
  readonly assistant: string;
  readonly demo: boolean;
  readonly language: Language;
}

/** Why a case cannot be begun like this, in a sentence; empty when it can. */
export function whyNotBegun(input: Pick<NewCase, 'code' | 'clinician' | 'assistant'>): string {
  const texts = [input.code, input.clinician, input.assistant];
  if (texts.some((text) => text.length > 200 || plainWords(text) !== text))
    return 'A code and initials have at most 200 letters, all of which can be seen.';
  const given = texts.every((text) => text.trim() !== '');
  return given ? '' : 'A case needs a code and the initials of clinician and assistant.';
}

export interface NextVisit {
  readonly visit: number;
  readonly clinician: string;
  readonly assistant: string;
  readonly language: Language;
}

export interface KitHost {
  now(): number;
  /** Calendar day of a moment where the practice is; without it, that of the device's own zone. */
  day?(at: number): string;
  /** The practice's own settings and protocols; without them, the ones shipped. */
  readonly practice?: Practice;
  readonly protocols?: readonly VisitProtocol[];
  /** Where it is noted that a number waits; without it, one lost with the page is not spoken of. */
  readonly waiting?: WaitingPort;
}
