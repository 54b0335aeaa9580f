/** Spanish. */
import type { LanguageTables } from '../language.ts';
import { words } from './tables.ts';
import { split, tens } from './tens.ts';

const DIGITS = 'cero uno dos tres cuatro cinco seis siete ocho nueve'.split(' ');
const TEENS = (
  'diez once doce trece catorce quince dieciséis diecisiete dieciocho diecinueve veinte ' +
  'veintiuno veintidós veintitrés veinticuatro veinticinco veintiséis veintisiete veintiocho veintinueve'
).split(' ');
const TENS = 'treinta cuarenta cincuenta sesenta setenta ochenta noventa'.split(' ');

function whole(n: number): string {
  if (n >= 100) return n === 100 ? 'cien' : `ciento ${whole(n - 100)}`;
  if (n < 10) return DIGITS[n] ?? '';
  if (n < 30) return TEENS[n - 10] ?? '';
  const ten = TENS[Math.floor(n / 10) - 3] ?? '';
  return n % 10 === 0 ? ten : `${ten} y ${DIGITS[n % 10]}`;
}

export const es: LanguageTables = {
  language: 'es',
  commaIsPoint: true,
  words,
  suffixes: 's es',
  hesitation: 'eh em ehm este_eh mmm hm uh um',
  commands: {
    next: 'siguiente adelante siguiente_paso avanza',
    back: 'atrás atras vuelve volver regresa',
    yes: 'sí si si_por_favor correcto eso_es de_acuerdo exacto',
    no: 'no no_gracias incorrecto eso_no',
    undo: 'deshacer deshaz deshazlo borra_eso',
    hold: 'pausa alto detener',
    carryOn: 'continuar continua seguimos reanudar',
    skip: 'omitir saltar saltalo omitelo',
    start: 'empezar empieza iniciar arranca',
    seated: 'colocada asentada en_boca cubeta_colocada',
    out: 'fuera ya_fuera cubeta_fuera',
    howLong: 'cuánto_falta cuanto_falta cuanto_tiempo cuanto_queda',
    sayAgain: 'repetir repite repitelo dilo_otra_vez',
    help: 'ayuda que_puedo_decir',
  },
  polite: 'por_favor ok vale gracias ahora entonces pues bueno ya exactos exacto justos aqui',
  note: 'nota observacion',
  confused: '60/70 61/71 62/72 63/73 64/74 65/75 66/76 67/77 68/78 69/79 2/12 3/13 6/16 16/60 50/15',
  tens,
  split,
  andAfterHundred: false,
  speech: { whole, point: 'coma', digits: DIGITS },
};
