/** German. */
import type { LanguageTables } from '../language.ts';
import { words } from './tables.ts';
import { tens } from './tens.ts';

export { speech } from './speech.ts';

export const de: LanguageTables = {
  language: 'de',
  commaIsPoint: true,
  words,
  suffixes: 'e en n s er es em',
  hesitation: 'ah aeh ahm aehm eh ehm hm mhm oeh uh',
  commands: {
    next: 'weiter|nächster Schritt',
    back: 'zurück|einen Schritt zurück',
    yes: 'ja|jawohl|ja bitte|stimmt',
    no: 'nein|falsch|nein danke',
    undo: 'rückgängig|zurücknehmen|streich das',
    hold: 'anhalten|Pause',
    carryOn: 'fortfahren|weitermachen',
    skip: 'auslassen|überspringen',
    start: 'Start|Uhr starten',
    seated: 'sitzt|Löffel sitzt|er sitzt',
    out: 'draußen|Löffel draußen',
    howLong: 'wie lange noch|wie lange',
    sayAgain: 'noch mal vorlesen|wiederholen',
    help: 'Hilfe|was kann ich sagen',
  },
  polite: 'bitte ok okay danke danke_schon danke_schoen jetzt dann so also mal gut genau exakt hier da',
  note: 'notiz bemerkung anmerkung',
  confused: '13/30 14/40 15/50 16/60 17/70 18/80 19/90 2/3 52/53 62/63 72/73 50/60 51/61 55/65',
  tens,
  andAfterHundred: true,
};
