/** English. */
import type { LanguageTables } from '../language.ts';
import { tens } from './tens.ts';
import { words } from './tables.ts';

const DIGITS = 'zero one two three four five six seven eight nine'.split(' ');
const TEENS = 'ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(' ');
const TENS = 'twenty thirty forty fifty sixty seventy eighty ninety'.split(' ');

function whole(n: number): string {
  if (n >= 100) return n === 100 ? 'one hundred' : `one hundred and ${whole(n - 100)}`;
  if (n < 10) return DIGITS[n] ?? '';
  if (n < 20) return TEENS[n - 10] ?? '';
  const ten = TENS[Math.floor(n / 10) - 2] ?? '';
  return n % 10 === 0 ? ten : `${ten}-${DIGITS[n % 10]}`;
}

export const en: LanguageTables = {
  language: 'en',
  commaIsPoint: false,
  words,
  suffixes: 's es ed d ing ly',
  hesitation: 'uh um er erm uhm hm mm_hm uhh umm ehm eh',
  commands: {
    next: 'next|next step|move on',
    back: 'back|go back|step back',
    yes: 'yes|yeah|yep|yes please|correct|keep it',
    no: 'no|nope|wrong|no thanks',
    undo: 'undo|undo that|scratch that|take that back',
    hold: 'hold|pause',
    carryOn: 'carry on|resume',
    skip: 'skip|skip this|skip it',
    start: 'start|start the clock',
    seated: "seated|tray seated|it's seated",
    out: "out|tray out|it's out",
    howLong: 'how long|how long left|time left',
    sayAgain: 'say again|say that again|read it back',
    help: 'help|what can I say',
  },
  polite: 'please ok okay thanks thank_you now then so well just alright exactly precisely there here i_think',
  note: 'note remark',
  confused: '13/30 14/40 15/50 16/60 17/70 18/80 19/90 60/50 61/51 62/52 63/53 64/54 65/55 66/56 67/57 68/58 69/59',
  tens,
  andAfterHundred: true,
  speech: { whole, point: 'point', digits: DIGITS, half: 'and a half', unit: 'millimetres' },
};
