/** English. */
import type { LanguageTables } from '../language.ts';
import { tens } from './tens.ts';
import { words } from './tables.ts';

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
};
