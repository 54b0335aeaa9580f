/** The strip of words for an ear that answers to a name. */
import type { StepView } from '../../app/model.ts';

const NUMBER = 'a number';

/** What needs no address first, then the address, then what follows it. While a number waits nothing needs one. */
export function addressedWords(words: readonly string[], mode: StepView['mode'], address: string): readonly string[] {
  if (address === '' || mode === 'confirm' || mode === 'choose') return words;
  const free: readonly string[] = mode === 'reading' ? words.filter((word) => word === NUMBER) : [];
  return [...free, `“${address}”, then:`, ...words.filter((word) => !free.includes(word))];
}
