/** Actions that only say what was asked for. */
import type { AppActions } from '../../app/model.ts';

const say =
  (what: string) =>
  (...given: readonly unknown[]): void => {
    console.info(what, ...given);
  };

export const loggingActions: AppActions = {
  press: say('press'),
  key: say('key'),
  type: say('type'),
  openCase: say('openCase'),
  newCase: say('newCase'),
  go: say('go'),
  setEar: say('setEar'),
  setSpeech: say('setSpeech'),
  talk: say('talk'),
  setPreferences: say('setPreferences'),
  fetchOnDevice: say('fetchOnDevice'),
  trySpeech: say('trySpeech'),
  armSound: say('armSound'),
  silence: say('silence'),
  openKeypad: say('openKeypad'),
  correct: say('correct'),
  takeOver: say('takeOver'),
  takeUpdate: say('takeUpdate'),
  note: say('note'),
  answerFlag: say('answerFlag'),
  setSpeechMayLeave: say('setSpeechMayLeave'),
  openVisit: say('openVisit'),
  saveFile: say('saveFile'),
  savePaper: say('savePaper'),
  askOwn: say('askOwn'),
  askFiles: say('askFiles'),
  askLock: say('askLock'),
  print: say('print'),
};
