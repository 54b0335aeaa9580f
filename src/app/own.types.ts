/** What the screens of the practice are given and may ask for. */
import type { CautionPlace } from '../domain/protocol/own.ts';
import type { Language, Practice, ReadingDef, VisitProtocol } from '../domain/protocol/types.ts';
import type { Wording } from '../domain/protocol/edit.ts';

export interface ProtocolView {
  /** As it stands for the next visit opened. */
  readonly before: VisitProtocol;
  readonly draft: VisitProtocol;
  /** Version the draft would become. */
  readonly version: number;
  /** What keeps the draft from being used, one sentence each. */
  readonly problems: readonly string[];
  /** What the summary could no longer work out. */
  readonly warnings: readonly string[];
  readonly difference: readonly string[];
}

export interface OwnView {
  readonly practice: Practice;
  /** Name of the newest version of each visit, "visit-1-own, version 2". */
  readonly visits: readonly { readonly visit: number; readonly title: string; readonly version: string }[];
  /** Cautions of the newest visits, in the words they have without the practice's own. */
  readonly cautions: readonly CautionPlace[];
  /** All readings with the ranges they have without the practice's own. */
  readonly readings: readonly ReadingDef[];
  /** Words that move a visit, by language: no reason may listen to one of them. */
  readonly taken: Readonly<Record<Language, readonly string[]>>;
  /** The visit being edited. */
  readonly protocol?: ProtocolView;
}

export type OwnRequest =
  | { readonly ask: 'savePractice'; readonly practice: Practice }
  | { readonly ask: 'exportPractice' }
  | { readonly ask: 'importPractice'; readonly text: string }
  | { readonly ask: 'exportProtocol' | 'dropChanges' | 'saveProtocol' }
  | { readonly ask: 'importProtocol'; readonly text: string }
  | { readonly ask: 'edit'; readonly visit: number }
  | { readonly ask: 'move'; readonly step: string; readonly by: -1 | 1 }
  | { readonly ask: 'drop'; readonly step: string }
  | { readonly ask: 'reword' | 'add'; readonly step: string; readonly wording: Wording };
