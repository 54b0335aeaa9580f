/** Why settings cannot be worked with, in a sentence for whoever has just written them. */
import { readPractice } from '../../domain/case/practiceFile.ts';
import type { Practice } from '../../domain/protocol/types.ts';

/** What a field is called on the screen, where a sentence begins with a bare number. */
const CALLED: Readonly<Record<string, string>> = {
  restSpaceTarget: 'Rest space',
  trayClearance: 'Tray clearance',
  borderShort: 'Tray border',
  mixS: 'Mixing ends',
  workingS: 'Working time ends',
  removeS: 'Remove from the mouth',
  pourFromMin: 'Pour not before',
  pourWithinMin: 'Pour within',
  waterC: 'Water temperature',
  customTrays: 'Custom trays',
  setUp: 'Set-up',
  finish: 'Finished dentures',
  minutes: 'Minutes',
  innerWidth: 'Inner width',
};

/** Empty when the settings may be used. The same check as for a file and for what is stored. */
export function whyNot(practice: Practice): string {
  const read = readPractice(practice);
  if (read.ok) return '';
  const called = CALLED[read.path.split('.').at(-1) ?? ''];
  return called !== undefined && /^\d/.test(read.text) ? `${called}: ${read.text}` : read.text;
}
