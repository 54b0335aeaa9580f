/** What only the screen knows: the digits typed so far, and which panel is open. */
import { useEffect, useState } from 'react';
import { parseHundredths, type LengthFailure } from '../domain/measure/length.ts';
import type { AppActions, AppModel } from '../app/model.ts';
import { choicesOf } from './choices.ts';
import { addToDraft, whyNotTaken, type KeyDeed, type Panel } from './keyboard.ts';
import { useKeys } from './useKeys.ts';

const NOT_A_NUMBER: Readonly<Record<LengthFailure, string>> = {
  empty: 'Type a number first.',
  notANumber: 'This is not a number.',
  negative: 'A distance cannot be negative.',
  tooFine: 'At most two decimals can be kept.',
  tooLarge: 'Larger than anything measured here.',
};

export interface VisitUi {
  readonly draft: string;
  /** Why the typed text cannot be taken; empty when it can. */
  readonly draftTrouble: string;
  readonly panel: Panel;
  sign(sign: string): void;
  rubOut(): void;
  enter(): void;
  closeKeypad(): void;
  show(panel: Panel): void;
}

export function useVisitUi(model: AppModel, actions: AppActions): VisitUi {
  const [draft, setDraft] = useState('');
  const [draftTrouble, setDraftTrouble] = useState('');
  const [panel, setPanel] = useState<Panel>('none');
  // Whoever closes the keypad, half a number never waits there for the next one.
  useEffect(() => {
    if (!model.keypadOpen) return undefined;
    return () => {
      setDraft('');
      setDraftTrouble('');
    };
  }, [model.keypadOpen]);

  const write = (text: string, why = '') => {
    setDraft(text);
    setDraftTrouble(why);
    if (!model.keypadOpen) actions.openKeypad(true);
  };
  const close = () => actions.openKeypad(false);
  const enter = () => {
    const text = draft.replace(/\.$/, '');
    const parsed = parseHundredths(text);
    if (!parsed.ok) {
      setDraftTrouble(NOT_A_NUMBER[parsed.reason]);
      return;
    }
    // The app closes the keypad when it has taken the number; otherwise the digits stay for mending.
    actions.type(text);
  };
  const onDeed = (deed: KeyDeed) => {
    if (deed.do === 'key') actions.key(deed.key);
    if (deed.do === 'press') actions.press(deed.intent);
    if (deed.do === 'draft') write(deed.draft, deed.why);
    if (deed.do === 'enter') enter();
    if (deed.do === 'closeKeypad') close();
    if (deed.do === 'closePanel') setPanel('none');
    if (deed.do === 'silence') actions.silence();
  };
  const openPanel = panel === 'flags' && model.flags.length === 0 ? 'none' : panel;
  const choices = choicesOf(model.step).map((choice) => choice.intent);
  const { place, keypadOpen } = model;
  const { step } = model;
  const shown = `${place}:${step?.step.id ?? ''}:${step?.mode ?? ''}:${keypadOpen ? 'keypad' : ''}`;
  useKeys({ shown, place, keypadOpen, draft, panel: openPanel, ringing: model.ringing.length > 0, choices }, onDeed);

  return {
    draft,
    draftTrouble,
    panel: openPanel,
    sign: (sign) => write(addToDraft(draft, sign), whyNotTaken(draft, sign)),
    rubOut: () => write(draft.slice(0, -1)),
    enter,
    closeKeypad: close,
    show: setPanel,
  };
}
