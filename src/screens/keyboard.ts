/**
 * One decision for every key, so that a pedal (Page Down, Page Up, Enter, Space) never does two things at once.
 * A control reached with Tab keeps Enter and Space for itself; one that merely holds the focus after a touch does not.
 */
import type { AppModel } from '../app/model.ts';

export type Panel = 'none' | 'flags' | 'note' | 'more' | 'consent';

export interface KeyPressed {
  readonly key: string;
  readonly repeat: boolean;
  /** Ctrl, Alt or Meta held. */
  readonly modified: boolean;
  readonly inTextField: boolean;
  /** Focus was brought to a button by Tab and no touch came since. */
  readonly onTabbedControl: boolean;
}

export interface KeySetting {
  /** Names what stands on screen; changes with every step and mode. */
  readonly shown: string;
  readonly place: AppModel['place'];
  readonly keypadOpen: boolean;
  readonly draft: string;
  readonly panel: Panel;
  readonly ringing: boolean;
  /** Intents that the digits 1, 2, 3 … stand for here; empty where a digit begins a number. */
  readonly choices: readonly string[];
}

export type KeyDeed =
  /** The browser's own meaning stays. */
  | { readonly do: 'leave' }
  /** Swallowed: means nothing here and must not scroll either. */
  | { readonly do: 'nothing' }
  | { readonly do: 'key'; readonly key: string }
  | { readonly do: 'press'; readonly intent: string }
  /** `why`: the sign was not taken, and why not. */
  | { readonly do: 'draft'; readonly draft: string; readonly why?: string }
  | { readonly do: 'enter' }
  | { readonly do: 'closeKeypad' }
  | { readonly do: 'closePanel' }
  | { readonly do: 'silence' };

const LEAVE: KeyDeed = { do: 'leave' };
const NOTHING: KeyDeed = { do: 'nothing' };
const FORWARD = new Set(['PageDown', 'PageUp', 'Enter', ' ', 'Backspace', 'Escape', 'ArrowRight', 'ArrowLeft']);
const GO_ON = new Set(['PageDown', 'Enter', ' ']);
const GO_BACK = new Set(['PageUp', 'Escape']);

/** The text on the keypad after one more sign. One point at most; a comma is taken as a point; four digits before it. */
export function addToDraft(draft: string, sign: string): string {
  const next = sign === ',' ? '.' : sign;
  if (next === '.') return draft.includes('.') ? draft : `${draft === '' ? '0' : draft}.`;
  const [whole = '', decimals] = draft.split('.');
  const full = decimals === undefined ? whole.length >= 4 : decimals.length >= 2;
  if (full) return draft;
  return draft === '0' ? next : draft + next;
}

/** Why the keypad cannot take one more sign; empty when it can. Nothing typed falls away without a word. */
export function whyNotTaken(draft: string, sign: string): string {
  if (addToDraft(draft, sign) !== draft || (draft === '0' && sign === '0')) return '';
  if (sign === '.' || sign === ',') return 'There is a point already.';
  return draft.includes('.')
    ? `“${sign}” was not taken: at most two decimals can be kept.`
    : `“${sign}” was not taken: at most four digits before the point.`;
}

function taken(draft: string, sign: string): KeyDeed {
  const why = whyNotTaken(draft, sign);
  return { do: 'draft', draft: addToDraft(draft, sign), ...(why === '' ? {} : { why }) };
}

function onKeypad(key: string, { draft }: KeySetting): KeyDeed {
  if (/^[0-9.,]$/.test(key)) return taken(draft, key);
  if (key === 'Backspace') return { do: 'draft', draft: draft.slice(0, -1) };
  if (GO_ON.has(key)) return draft === '' ? NOTHING : { do: 'enter' };
  if (GO_BACK.has(key)) return { do: 'closeKeypad' };
  return FORWARD.has(key) ? NOTHING : LEAVE;
}

function inVisit(key: string, setting: KeySetting): KeyDeed {
  if (/^[0-9]$/.test(key)) {
    if (setting.choices.length === 0) return { do: 'draft', draft: key };
    const intent = setting.choices[Number(key) - 1];
    return intent === undefined ? NOTHING : { do: 'press', intent };
  }
  const letter = /^[a-z]$/i.test(key);
  return FORWARD.has(key) || letter ? { do: 'key', key } : LEAVE;
}

/** What one key does. Held-down keys repeat nothing: a foot that rests on the pedal passes one step, not ten. */
export function deedOf(pressed: KeyPressed, setting: KeySetting): KeyDeed {
  const { key } = pressed;
  if (pressed.modified || pressed.inTextField) return LEAVE;
  if (pressed.onTabbedControl && (key === 'Enter' || key === ' ')) return LEAVE;
  if (setting.ringing && key === 'Escape' && !setting.keypadOpen && setting.panel === 'none') return { do: 'silence' };
  if (setting.place !== 'visit') return LEAVE;
  if (pressed.repeat) return FORWARD.has(key) || /^[\w.,]$/.test(key) ? NOTHING : LEAVE;
  if (setting.panel !== 'none') {
    if (GO_BACK.has(key)) return { do: 'closePanel' };
    return GO_ON.has(key) ? NOTHING : LEAVE;
  }
  return setting.keypadOpen ? onKeypad(key, setting) : inVisit(key, setting);
}
