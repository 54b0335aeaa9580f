/** The one thing screens are given, put together from the stores, the session and the state of the devices. */
import type { ReadingDef } from '../domain/protocol/types.ts';
import { ringingNow } from '../domain/summary/clocks.ts';
import { reasonInWords, summarise } from '../domain/summary/summarise.ts';
import type { Flag, Summary } from '../domain/summary/types.ts';
import type { CaseState, UiState } from '../stores/stores.ts';
import { modeOf } from './expectation.ts';
import type { AppModel, CaseListRow, EarState, SaveState, SoundState } from './model.ts';
import type { OpenCase } from './open-case.ts';
import { stepView } from './step-view.ts';

export interface ModelParts {
  readonly ui: UiState;
  readonly cases: readonly CaseListRow[];
  readonly caseState: CaseState;
  readonly open: OpenCase | undefined;
  readonly readings: readonly ReadingDef[];
  readonly now: number;
  readonly ear: EarState;
  readonly save: SaveState;
  readonly sound: SoundState;
  readonly speech: boolean | undefined;
}

const RANK: Readonly<Record<Flag['level'], number>> = { caution: 0, disagrees: 1, look: 2 };

function unanswered(summary: Summary): readonly Flag[] {
  return summary.flags.filter((flag) => flag.answer === undefined).toSorted((a, b) => RANK[a.level] - RANK[b.level]);
}

function openParts(open: OpenCase, parts: ModelParts): Partial<AppModel> {
  const { session, protocol, practice } = open;
  const { readings, now } = parts;
  const view = session.view();
  const context = session.context();
  const summary = summarise(view, { protocol, readings, practice, now });
  const expectation = session.expectation();
  const chosen = session.chosen();
  const step = stepView({ context, view, protocol, readings, practice, expectation, summary, chosen });
  return {
    ...(step === undefined ? {} : { step }),
    summary,
    clocks: summary.clocks.filter((row) => !row.stopped),
    ringing: modeOf(context) === 'none' ? [] : ringingNow(view, summary.clocks, now),
    flags: unanswered(summary),
    cautions: summary.cautions,
    reasons: practice.reasons.map(({ id }) => ({ id, label: reasonInWords(practice)(id) })),
  };
}

export function buildModel(parts: ModelParts): AppModel {
  const { ui, cases, open, now, ear, save, sound, speech } = parts;
  return {
    place: ui.place,
    now,
    cases,
    clocks: [],
    ringing: [],
    flags: [],
    cautions: [],
    ...(open === undefined ? {} : openParts(open, parts)),
    ear,
    save,
    sound,
    ...(speech === undefined ? {} : { speech }),
    keypadOpen: ui.keypadOpen,
    said: ui.said,
    trouble: ui.trouble,
  };
}
