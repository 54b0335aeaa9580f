/** The one thing screens are given, put together from the stores, the open case and the state of the devices. */
import type { SaveStatus } from '../storage/types.ts';
import type { Settings, UiState } from '../stores/stores.ts';
import type { AppModel, CaseListRow, EarState, Safety, SaveState, SoundState } from './model.ts';
import type { OpenCase } from './open-case.ts';
import type { UnderWay } from './under-way.ts';

export interface ModelParts {
  readonly ui: UiState;
  readonly settings: Settings;
  readonly cases: readonly CaseListRow[];
  /** The list has been read at least once. */
  readonly casesRead: boolean;
  readonly open: OpenCase | undefined;
  /** Cases that are not open and whose clocks run. */
  readonly others: Pick<UnderWay, 'clocks' | 'ringing'>;
  readonly now: number;
  readonly ear: EarState;
  readonly save: SaveState;
  readonly sound: SoundState;
  readonly canSpeak: boolean;
  readonly writer: 'here' | 'elsewhere';
  readonly safety: Safety;
  /** A newer version of the app waits. */
  readonly updateWaits: boolean;
  readonly own: Partial<AppModel>;
}

/** While the record is locked, and before it is known whether it is: nothing of any case. */
export const NOTHING_KNOWN: Pick<ModelParts, 'cases' | 'open' | 'others'> = {
  cases: [],
  open: undefined,
  others: { clocks: () => [], ringing: () => [] },
};

export function buildModel(parts: ModelParts): AppModel {
  const { ui, settings, cases, open, now, ear, save, sound, canSpeak, writer, safety } = parts;
  const own = open?.parts(now);
  return {
    place: ui.place,
    now,
    cases,
    ...(parts.casesRead ? {} : { reading: true }),
    flags: [],
    cautions: [],
    ...own,
    clocks: [...(own?.clocks ?? []), ...parts.others.clocks(now)],
    ringing: [...(own?.ringing ?? []), ...parts.others.ringing(now)].toSorted((a, b) => b.lateMs - a.lateMs),
    ear,
    save,
    sound,
    ...(canSpeak ? { speech: settings.speech } : {}),
    speechMayLeave: settings.mayLeaveDevice,
    preferences: {
      ...settings,
      onDevice: ui.onDevice,
      ...(open === undefined ? {} : { visitLanguage: open.language }),
    },
    keypadOpen: ui.keypadOpen,
    ...(open === undefined ? {} : { writer, caseId: open.id }),
    safety,
    ...parts.own,
    ...(mayUpdate(parts) ? { update: 'ready' } : {}),
    said: ui.said,
    trouble: ui.trouble,
  };
}

/** Never in the middle of anything: not off the list of cases, not with a clock running, not with an entry unsaved. */
function mayUpdate({ ui, save, open, others, now, updateWaits }: ModelParts): boolean {
  if (!updateWaits || ui.place !== 'cases' || save.state !== 'kept') return false;
  return (open?.running(now).clocks ?? []).length + others.clocks(now).length === 0;
}

/** What the screen says of the disk: `what` was last written and is safe. */
export function saveState(status: SaveStatus, said: string): SaveState {
  if (status.state === 'memory') return { state: 'memory', why: status.why, unsaved: status.unsaved };
  if (status.state === 'keeping') return { state: 'keeping' };
  return { state: 'kept', what: said };
}
