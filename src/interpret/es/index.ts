/** Spanish. */
import type { LanguageTables } from '../language.ts';
import { words } from './tables.ts';
import { tens } from './tens.ts';

export { speech } from './speech.ts';

export const es: LanguageTables = {
  language: 'es',
  commaIsPoint: true,
  words,
  suffixes: 's es',
  hesitation: 'eh em ehm este_eh mmm hm uh um',
  commands: {
    next: 'siguiente|siguiente paso',
    back: 'atrás|volver',
    yes: 'sí|sí por favor|correcto',
    no: 'no|incorrecto|no gracias',
    undo: 'deshacer|deshaz|borra eso',
    hold: 'pausa|detener',
    carryOn: 'continuar|seguimos',
    skip: 'omitir|saltar',
    start: 'empezar|iniciar',
    seated: 'colocada|cubeta colocada',
    out: 'fuera|cubeta fuera',
    howLong: 'cuánto falta|cuánto queda',
    sayAgain: 'repetir|repite',
    help: 'ayuda|qué puedo decir',
  },
  polite: 'por_favor ok vale gracias ahora entonces pues bueno ya exactos exacto justos aqui',
  note: 'nota observacion',
  confused: '60/70 61/71 62/72 63/73 64/74 65/75 66/76 67/77 68/78 69/79 2/12 3/13 6/16 16/60 50/15',
  tens,
  andAfterHundred: false,
};
