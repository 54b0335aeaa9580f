/** French. */
import type { LanguageTables } from '../language.ts';
import { words } from './tables.ts';
import { tens } from './tens.ts';

export { speech } from './speech.ts';

export const fr: LanguageTables = {
  language: 'fr',
  commaIsPoint: true,
  words,
  suffixes: 's e es',
  hesitation: 'euh heu hum hm eh',
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
};
