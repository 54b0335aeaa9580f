/**
 * Named regions of the fitting surfaces, as answers. Order: most often sore first, as far as shares were published
 * (Kivovics et al., Int J Prosthodont 2007;20:397; Rev Clin Periodoncia 2016;9:48; both texts seen), the rest by custom.
 * Right and left are the patient's.
 */
import type { Answer, Language } from './types.ts';

type Words = Readonly<Record<Language, readonly string[]>>;
const region = (id: string, label: string, words: Words): Answer => ({ id, label, words, tone: 'neutral' });

export const upperRegions: readonly Answer[] = [
  region('upper-lip-sulcus', 'Lip sulcus', {
    en: ['lip sulcus'],
    de: ['lippenumschlag'],
    es: ['surco labial'],
    fr: ['vestibule labial'],
  }),
  region('upper-cheek-right', 'Cheek sulcus, right', {
    en: ['right cheek'],
    de: ['wange rechts'],
    es: ['mejilla derecha'],
    fr: ['joue droite'],
  }),
  region('upper-cheek-left', 'Cheek sulcus, left', {
    en: ['left cheek'],
    de: ['wange links'],
    es: ['mejilla izquierda'],
    fr: ['joue gauche'],
  }),
  region('upper-frenum', 'A frenum', {
    en: ['frenum'],
    de: ['bändchen'],
    es: ['frenillo'],
    fr: ['frein'],
  }),
  region('upper-tuberosity-right', 'Tuberosity, right', {
    en: ['right tuberosity'],
    de: ['tuber rechts'],
    es: ['tuberosidad derecha'],
    fr: ['tubérosité droite'],
  }),
  region('upper-tuberosity-left', 'Tuberosity, left', {
    en: ['left tuberosity'],
    de: ['tuber links'],
    es: ['tuberosidad izquierda'],
    fr: ['tubérosité gauche'],
  }),
  region('upper-notch-right', 'Hamular notch, right', {
    en: ['right notch'],
    de: ['hamulus rechts'],
    es: ['escotadura derecha'],
    fr: ['encoche droite'],
  }),
  region('upper-notch-left', 'Hamular notch, left', {
    en: ['left notch'],
    de: ['hamulus links'],
    es: ['escotadura izquierda'],
    fr: ['encoche gauche'],
  }),
  region('upper-ridge', 'Ridge crest', {
    en: ['ridge', 'crest'],
    de: ['kamm', 'kieferkamm'],
    es: ['reborde', 'cresta'],
    fr: ['crête'],
  }),
  region('upper-palate', 'Hard palate', {
    en: ['palate'],
    de: ['gaumen'],
    es: ['paladar'],
    fr: ['palais'],
  }),
  region('upper-rear', 'Rear seal', {
    en: ['rear seal', 'rear border'],
    de: ['hinterrand', 'dorsaler rand'],
    es: ['borde posterior'],
    fr: ['bord postérieur'],
  }),
];

export const lowerRegions: readonly Answer[] = [
  region('lower-mylohyoid-right', 'Behind the mylohyoid, right', {
    en: ['right mylohyoid'],
    de: ['mylohyoid rechts'],
    es: ['milohioideo derecho'],
    fr: ['mylohyoïdien droit'],
  }),
  region('lower-mylohyoid-left', 'Behind the mylohyoid, left', {
    en: ['left mylohyoid'],
    de: ['mylohyoid links'],
    es: ['milohioideo izquierdo'],
    fr: ['mylohyoïdien gauche'],
  }),
  region('lower-tongue-front', 'Tongue side, front', {
    en: ['front tongue side'],
    de: ['zungenseite vorn'],
    es: ['lado lingual delante'],
    fr: ['côté langue devant'],
  }),
  region('lower-tongue-right', 'Tongue side, right', {
    en: ['right tongue side'],
    de: ['zungenseite rechts'],
    es: ['lado lingual derecho'],
    fr: ['côté langue droit'],
  }),
  region('lower-tongue-left', 'Tongue side, left', {
    en: ['left tongue side'],
    de: ['zungenseite links'],
    es: ['lado lingual izquierdo'],
    fr: ['côté langue gauche'],
  }),
  region('lower-lip-sulcus', 'Lip sulcus', {
    en: ['lip sulcus'],
    de: ['lippenumschlag'],
    es: ['surco labial'],
    fr: ['vestibule labial'],
  }),
  region('lower-cheek-right', 'Cheek sulcus, right', {
    en: ['right cheek'],
    de: ['wange rechts'],
    es: ['mejilla derecha'],
    fr: ['joue droite'],
  }),
  region('lower-cheek-left', 'Cheek sulcus, left', {
    en: ['left cheek'],
    de: ['wange links'],
    es: ['mejilla izquierda'],
    fr: ['joue gauche'],
  }),
  region('lower-ridge', 'Ridge crest', {
    en: ['ridge', 'crest'],
    de: ['kamm', 'kieferkamm'],
    es: ['reborde', 'cresta'],
    fr: ['crête'],
  }),
  region('lower-pad-right', 'Retromolar pad, right', {
    en: ['right pad'],
    de: ['polster rechts'],
    es: ['papila derecha'],
    fr: ['trigone droit'],
  }),
  region('lower-pad-left', 'Retromolar pad, left', {
    en: ['left pad'],
    de: ['polster links'],
    es: ['papila izquierda'],
    fr: ['trigone gauche'],
  }),
  region('lower-frenum', 'A frenum', {
    en: ['frenum'],
    de: ['bändchen'],
    es: ['frenillo'],
    fr: ['frein'],
  }),
];
