/** German. */
import type { LanguageTables } from '../language.ts';
import { words } from './tables.ts';
import { split, tens } from './tens.ts';

const DIGITS = 'null eins zwei drei vier fünf sechs sieben acht neun'.split(' ');
const TEENS = 'zehn elf zwölf dreizehn vierzehn fünfzehn sechzehn siebzehn achtzehn neunzehn'.split(' ');
const TENS = 'zwanzig dreißig vierzig fünfzig sechzig siebzig achtzig neunzig'.split(' ');

function whole(n: number): string {
  if (n >= 100) return n === 100 ? 'einhundert' : `einhundert${whole(n - 100)}`;
  if (n < 10) return DIGITS[n] ?? '';
  if (n < 20) return TEENS[n - 10] ?? '';
  const ten = TENS[Math.floor(n / 10) - 2] ?? '';
  const unit = n % 10;
  return unit === 0 ? ten : `${unit === 1 ? 'ein' : DIGITS[unit]}und${ten}`;
}

export const de: LanguageTables = {
  language: 'de',
  commaIsPoint: true,
  words,
  suffixes: 'e en n s er es em',
  hesitation: 'ah aeh ahm aehm eh ehm hm mhm oeh uh um',
  commands: {
    next: 'weiter nachster naechster nachster_schritt nächster_schritt vorwarts',
    back: 'zurück zuruck zurueck einen_schritt_zuruck',
    yes: 'ja jawohl ja_bitte richtig stimmt genau das_stimmt passt',
    no: 'nein nee falsch nein_danke stimmt_nicht das_stimmt_nicht',
    undo: 'rückgängig ruckgangig rueckgaengig zurücknehmen zurucknehmen zuruecknehmen streich_das',
    hold: 'anhalten halt pause innehalten',
    carryOn: 'fortfahren weitermachen es_geht_weiter',
    skip: 'auslassen überspringen uberspringen ueberspringen',
    start: 'start starten uhr_starten beginnen',
    seated: 'sitzt im_mund loffel_sitzt er_sitzt loeffel_sitzt',
    out: 'draußen draussen heraus raus ist_draussen loffel_draussen',
    howLong: 'wie_lange wie_lange_noch wie_viel_zeit',
    sayAgain: 'wiederholen wiederhole_das sag_das_noch_mal noch_mal_vorlesen',
    help: 'hilfe was_kann_ich_sagen',
  },
  polite: 'bitte ok okay danke danke_schon danke_schoen jetzt dann so also mal gut genau exakt hier da',
  note: 'notiz bemerkung anmerkung',
  confused: '13/30 14/40 15/50 16/60 17/70 18/80 19/90 2/3 52/53 62/63 72/73 50/60 51/61 55/65',
  tens,
  split,
  andAfterHundred: true,
  speech: { whole, point: 'Komma', digits: DIGITS },
};
