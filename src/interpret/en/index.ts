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
    next: 'next go_on move_on next_step next_one continue',
    back: 'back go_back step_back previous previous_step one_back',
    yes: 'yes yeah yep yes_please correct that_s_right that_is_right right keep_it keep_that',
    no: 'no nope no_thanks wrong that_s_wrong that_is_wrong not_right',
    undo: 'undo undo_that take_that_back take_it_back scratch_that strike_that',
    hold: 'hold hold_everything pause',
    carryOn: 'carry_on resume go_ahead',
    skip: 'skip skip_it skip_this skip_that leave_it_out',
    start: 'start start_the_clock start_clock start_now start_mixing',
    seated: 'seated seated_now tray_seated it_s_seated tray_is_seated tray_is_in',
    out: 'out it_s_out tray_out tray_is_out impression_out',
    howLong: 'how_long how_long_left how_much_longer how_much_time time_left',
    sayAgain: 'say_again say_it_again say_that_again repeat_that read_it_back read_that_back',
    help: 'help what_can_i_say',
  },
  polite: 'please ok okay thanks thank_you now then so well just alright exactly precisely there here i_think',
  note: 'note remark',
  confused: '13/30 14/40 15/50 16/60 17/70 18/80 19/90 60/50 61/51 62/52 63/53 64/54 65/55 66/56 67/57 68/58 69/59',
  tens,
  andAfterHundred: true,
  speech: { whole, point: 'point', digits: DIGITS },
};
