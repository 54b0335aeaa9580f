/** French. */
import type { LanguageTables } from '../language.ts';
import { words } from './tables.ts';
import { tens } from './tens.ts';

const UNITS =
  'zéro un deux trois quatre cinq six sept huit neuf dix onze douze treize quatorze quinze seize dix-sept dix-huit dix-neuf'.split(
    ' ',
  );
const TENS = 'vingt trente quarante cinquante soixante'.split(' ');

function whole(n: number): string {
  if (n >= 100) return n === 100 ? 'cent' : `cent ${whole(n - 100)}`;
  if (n < 20) return UNITS[n] ?? '';
  if (n >= 80) return n === 80 ? 'quatre-vingts' : `quatre-vingt-${UNITS[n - 80]}`;
  const base = n >= 60 ? 60 : Math.floor(n / 10) * 10;
  const ten = TENS[base / 10 - 2] ?? '';
  const rest = n - base;
  if (rest === 0) return ten;
  return rest === 1 || rest === 11 ? `${ten} et ${UNITS[rest]}` : `${ten}-${UNITS[rest]}`;
}

export const fr: LanguageTables = {
  language: 'fr',
  commaIsPoint: true,
  words,
  suffixes: 's e es',
  hesitation: 'euh heu hum hm mm eh',
  commands: {
    next: 'suivant|étape suivante',
    back: 'retour|étape précédente',
    yes: 'oui|oui merci|correct',
    no: 'non|faux|non merci',
    undo: 'annuler|annule|efface ça',
    hold: 'pause|suspendre',
    carryOn: 'continuer|reprendre',
    skip: 'passer|sauter',
    start: 'démarrer|lancer',
    seated: "en place|c'est en place",
    out: "sorti|c'est sorti",
    howLong: 'combien de temps|temps restant',
    sayAgain: 'répéter|répète',
    help: 'aide|que puis-je dire',
  },
  polite: 's_il_vous_plait s_il_te_plait ok d_accord merci maintenant alors donc bon bien exactement pile ici',
  note: 'note remarque',
  confused:
    '60/70 61/71 62/72 63/73 64/74 65/75 66/76 80/90 81/91 82/92 83/93 84/94 85/95 86/96 2/12 3/13 6/16 6/10 66/70 60/16',
  tens,
  andAfterHundred: false,
  speech: { whole, point: 'virgule', digits: UNITS.slice(0, 10), half: 'et demi', unit: 'millimètres' },
};
