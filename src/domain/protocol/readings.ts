/**
 * Every quantity that is measured and called out, as data. Ranges are whole hundredths of the unit: outside `plausible`
 * the number is asked for again, outside `expected` it is kept and flagged. A practice may change all of them.
 */
import type { ReadingDef } from './types.ts';

const OUR_RANGE = 'Range: our choice from common practice; no published figure for patients without teeth was found.';
const NOSE_CHIN =
  'Range: our choice around published means of nose tip to chin at rest in 52 people without teeth (67.9 mm without, 70.3 mm with both dentures; J Istanbul Univ Fac Dent 30(3):121, abstract seen; no spread published).';

const ridgeAndTissue: readonly ReadingDef[] = [
  {
    id: 'finding-size',
    label: 'Size of the finding',
    unit: 'mm',
    names: {
      en: ['finding size', 'size of the finding'],
      de: ['befundgröße', 'größe des befunds'],
      es: ['tamaño del hallazgo', 'tamaño de la lesión'],
      fr: ['taille de la lésion', 'taille de lésion'],
    },
    plausible: [50, 10000],
    expected: [100, 4000],
    source: 'Range: our choice, so that a slip of the decimal point is asked about. Size decides nothing by itself.',
  },
  {
    id: 'finding-weeks',
    label: 'Weeks the finding has been there',
    unit: 'weeks',
    names: {
      en: ['weeks present', 'finding weeks'],
      de: ['wochen vorhanden', 'wochen seit beginn'],
      es: ['semanas presente', 'semanas de evolución'],
      fr: ["semaines d'évolution", 'semaines présentes'],
    },
    plausible: [0, 52000],
    expected: [0, 10400],
    source: 'Range: our choice. Local referral rules decide what a duration means.',
  },
  {
    id: 'bone-height',
    label: 'Least bone height of the lower jaw',
    unit: 'mm',
    names: {
      en: ['bone height', 'lower bone'],
      de: ['knochenhöhe', 'unterkieferhöhe'],
      es: ['altura ósea', 'altura del hueso'],
      fr: ['hauteur osseuse', "hauteur de l'os"],
    },
    plausible: [100, 4500],
    expected: [500, 3500],
    source:
      'Range: our choice around the bands 21, 16 and 11 mm of McGarry et al., J Prosthodont 1999;8:27 (figures seen).',
  },
  {
    id: 'upper-width',
    label: 'Upper ridge width',
    unit: 'mm',
    names: {
      en: ['upper width', 'upper ridge', 'upper ridge width'],
      de: ['breite oben', 'oberkieferbreite', 'obere breite'],
      es: ['ancho superior', 'anchura superior'],
      fr: ['largeur haute', 'largeur supérieure', 'largeur du haut'],
    },
    plausible: [3000, 8500],
    expected: [4500, 7000],
    source: OUR_RANGE,
  },
  {
    id: 'lower-width',
    label: 'Lower ridge width at the pads',
    unit: 'mm',
    names: {
      en: ['lower width', 'lower ridge', 'pad to pad'],
      de: ['breite unten', 'unterkieferbreite', 'untere breite'],
      es: ['ancho inferior', 'anchura inferior'],
      fr: ['largeur basse', 'largeur inférieure', 'largeur du bas'],
    },
    plausible: [3000, 8500],
    expected: [4500, 7000],
    source: OUR_RANGE,
  },
  {
    id: 'lower-length',
    label: 'Lower ridge length, front to pads',
    unit: 'mm',
    names: {
      en: ['lower length', 'ridge length'],
      de: ['länge unten', 'untere länge'],
      es: ['largo inferior', 'longitud inferior'],
      fr: ['longueur basse', 'longueur inférieure'],
    },
    plausible: [2500, 7500],
    expected: [3500, 6000],
    source: OUR_RANGE,
  },
];

const SULCUS_RANGE = {
  unit: 'mm',
  plausible: [50, 2500],
  expected: [200, 1600],
  source: 'Range: our choice from common practice; no published figure was found.',
} as const;

const sulcus: readonly ReadingDef[] = [
  {
    ...SULCUS_RANGE,
    id: 'sulcus-upper-labial',
    label: 'Upper sulcus depth, lip',
    names: {
      en: ['upper lip sulcus', 'upper labial'],
      de: ['lippe oben', 'vestibulum oben vorne'],
      es: ['surco labial superior', 'labial superior'],
      fr: ['vestibule labial haut', 'labial haut'],
    },
  },
  {
    ...SULCUS_RANGE,
    id: 'sulcus-upper-buccal-right',
    label: 'Upper sulcus depth, right cheek',
    names: {
      en: ['upper right sulcus', 'upper right cheek'],
      de: ['wange oben rechts', 'vestibulum oben rechts'],
      es: ['surco superior derecho', 'mejilla superior derecha'],
      fr: ['vestibule haut droit', 'joue haute droite'],
    },
  },
  {
    ...SULCUS_RANGE,
    id: 'sulcus-upper-buccal-left',
    label: 'Upper sulcus depth, left cheek',
    names: {
      en: ['upper left sulcus', 'upper left cheek'],
      de: ['wange oben links', 'vestibulum oben links'],
      es: ['surco superior izquierdo', 'mejilla superior izquierda'],
      fr: ['vestibule haut gauche', 'joue haute gauche'],
    },
  },
  {
    ...SULCUS_RANGE,
    id: 'sulcus-lower-labial',
    label: 'Lower sulcus depth, lip',
    names: {
      en: ['lower lip sulcus', 'lower labial'],
      de: ['lippe unten', 'vestibulum unten vorne'],
      es: ['surco labial inferior', 'labial inferior'],
      fr: ['vestibule labial bas', 'labial bas'],
    },
  },
  {
    ...SULCUS_RANGE,
    id: 'sulcus-lower-buccal-right',
    label: 'Lower sulcus depth, right cheek',
    names: {
      en: ['lower right sulcus', 'lower right cheek'],
      de: ['wange unten rechts', 'vestibulum unten rechts'],
      es: ['surco inferior derecho', 'mejilla inferior derecha'],
      fr: ['vestibule bas droit', 'joue basse droite'],
    },
  },
  {
    ...SULCUS_RANGE,
    id: 'sulcus-lower-buccal-left',
    label: 'Lower sulcus depth, left cheek',
    names: {
      en: ['lower left sulcus', 'lower left cheek'],
      de: ['wange unten links', 'vestibulum unten links'],
      es: ['surco inferior izquierdo', 'mejilla inferior izquierda'],
      fr: ['vestibule bas gauche', 'joue basse gauche'],
    },
  },
  {
    ...SULCUS_RANGE,
    id: 'sulcus-lower-lingual-right',
    label: 'Lower sulcus depth, right tongue side',
    names: {
      en: ['right tongue side', 'lingual right'],
      de: ['zungenseite rechts', 'lingual rechts'],
      es: ['lado lingual derecho', 'lingual derecho'],
      fr: ['côté langue droit', 'lingual droit'],
    },
  },
  {
    ...SULCUS_RANGE,
    id: 'sulcus-lower-lingual-left',
    label: 'Lower sulcus depth, left tongue side',
    names: {
      en: ['left tongue side', 'lingual left'],
      de: ['zungenseite links', 'lingual links'],
      es: ['lado lingual izquierdo', 'lingual izquierdo'],
      fr: ['côté langue gauche', 'lingual gauche'],
    },
  },
];

const heights: readonly ReadingDef[] = [
  {
    id: 'old-height',
    label: 'Nose to chin, present dentures closed',
    unit: 'mm',
    names: {
      en: ['old height', 'old dentures height'],
      de: ['alte höhe', 'höhe mit alten prothesen'],
      es: ['altura antigua', 'altura con las prótesis viejas'],
      fr: ['ancienne hauteur', 'hauteur des anciennes prothèses'],
    },
    plausible: [3500, 10800],
    expected: [5000, 8300],
    source: NOSE_CHIN,
  },
  {
    id: 'rest-height',
    label: 'Rest height',
    unit: 'mm',
    names: {
      en: ['rest height', 'rest', 'at rest'],
      de: ['ruhehöhe', 'ruhelage', 'in ruhe'],
      es: ['altura de reposo', 'reposo', 'en reposo'],
      fr: ['hauteur de repos', 'repos', 'au repos'],
    },
    plausible: [4000, 11000],
    expected: [5500, 8500],
    source: NOSE_CHIN,
    repeat: { least: 3, withinSet: true },
  },
  {
    id: 'closed-height',
    label: 'Closed height',
    unit: 'mm',
    names: {
      en: ['closed height', 'closed', 'teeth together'],
      de: ['schlusshöhe', 'geschlossen', 'schlussbiss'],
      es: ['altura cerrada', 'cerrado', 'en oclusión'],
      fr: ['hauteur fermée', 'fermé', 'en occlusion'],
    },
    plausible: [3500, 10800],
    expected: [5000, 8300],
    source: NOSE_CHIN,
    repeat: { least: 2, withinSet: true },
  },
  {
    id: 'record-height',
    label: 'Height with the record in place',
    unit: 'mm',
    names: {
      en: ['record height', 'with the record'],
      de: ['registrathöhe', 'mit registrat'],
      es: ['altura del registro', 'con el registro'],
      fr: ["hauteur d'enregistrement", 'avec le mordu'],
    },
    plausible: [3500, 11000],
    expected: [5000, 8500],
    source: NOSE_CHIN,
    repeat: { least: 1, withinSet: true },
  },
];

export const readingDefs: readonly ReadingDef[] = [...ridgeAndTissue, ...sulcus, ...heights];
