/**
 * Every quantity that is measured and called out, as data. Ranges are whole hundredths of the unit: outside `plausible`
 * the number is asked for again, outside `expected` it is kept and flagged. A practice may change all of them. Where the
 * reference has the same quantity its range is taken from there (docs/decisions/0012-one-range.md).
 */
import { visitRange } from '../measure/ranges.ts';
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
    ...visitRange('closed-height'),
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
    ...visitRange('rest-height'),
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
    ...visitRange('closed-height'),
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

const CHOICE = 'Range: our choice from common practice; no published figure was found.';

const lipAndTeeth: readonly ReadingDef[] = [
  {
    id: 'rim-show',
    label: 'Upper rim below the resting lip',
    unit: 'mm',
    names: {
      en: ['rim show', 'rim below lip'],
      de: ['wall sichtbar', 'wall unter lippe'],
      es: ['rodete visible', 'rodete bajo el labio'],
      fr: ['bourrelet visible', 'bourrelet sous la lèvre'],
    },
    plausible: [0, 1000],
    expected: [0, 200],
    source: 'Expected 0–2 mm at rest, less in older patients and long lips (from memory). Outer limit: our choice.',
  },
  {
    id: 'speaking-space',
    label: 'Closest speaking space',
    unit: 'mm',
    names: {
      en: ['speaking space', 'speech space'],
      de: ['sprechabstand', 'sprechspalt'],
      es: ['espacio de habla', 'espacio fonético'],
      fr: ['espace de parole', 'espace phonétique'],
    },
    plausible: [0, 1000],
    expected: [50, 400],
    source:
      'Teaching value 1–2 mm at “s” (Pound, as given in the 2017 prosthodontic glossary, text seen); denture wearers measured 2.61 ± 1.53 mm (J Appl Oral Sci 2005;13(4), text seen). Range: our choice around both.',
  },
  {
    id: 'midline-offset',
    label: 'Midline offset',
    unit: 'mm',
    names: {
      en: ['midline offset', 'midline'],
      de: ['mittellinie', 'abweichung der mitte'],
      es: ['línea media', 'desvío de la línea media'],
      fr: ['ligne médiane', 'décalage médian'],
    },
    plausible: [0, 2000],
    expected: [0, 300],
    source: CHOICE,
  },
  {
    id: 'canine-lines',
    label: 'Between the canine lines, over the curve',
    unit: 'mm',
    names: {
      en: ['canine lines', 'canine to canine'],
      de: ['eckzahnlinien', 'eckzahn zu eckzahn'],
      es: ['líneas caninas', 'de canino a canino'],
      fr: ['lignes canines', 'de canine à canine'],
    },
    ...visitRange('six-anteriors'),
    source:
      'Range: our choice of three standard deviations around six front teeth 46.0 ± 2.8 and 48.2 ± 2.1 mm (text seen).',
  },
  {
    id: 'high-lip-line',
    label: 'Rim edge up to the high lip line',
    unit: 'mm',
    names: {
      en: ['high lip line', 'smile line'],
      de: ['lachlinie', 'hohe lippenlinie'],
      es: ['línea de sonrisa', 'línea alta del labio'],
      fr: ['ligne du sourire', 'ligne haute de la lèvre'],
    },
    plausible: [0, 2500],
    expected: [200, 1400],
    source: CHOICE,
  },
  {
    id: 'interalar-width',
    label: 'Width of the nose',
    unit: 'mm',
    names: {
      en: ['nose width', 'interalar'],
      de: ['nasenbreite', 'nasenflügel'],
      es: ['ancho de nariz', 'ancho nasal'],
      fr: ['largeur du nez', 'largeur nasale'],
    },
    ...visitRange('interalar'),
    source: 'Published means 35–41 mm, standard deviation 3.8 (text seen); limits: our choice from three of them.',
  },
  {
    id: 'face-width',
    label: 'Face width at the cheekbones',
    unit: 'mm',
    names: {
      en: ['face width', 'cheekbone width'],
      de: ['gesichtsbreite', 'jochbogenbreite'],
      es: ['ancho de cara', 'ancho de pómulos'],
      fr: ['largeur du visage', 'largeur des pommettes'],
    },
    ...visitRange('bizygomatic'),
    source:
      'Computed from the public US Army survey of 2012: men 142.6 ± 6.2, women 133.8 ± 5.6 mm; expected is three deviations of both.',
  },
  {
    id: 'face-height',
    label: 'Face height, hairline to chin',
    unit: 'mm',
    names: {
      en: ['face height', 'hairline to chin'],
      de: ['gesichtshöhe', 'haaransatz bis kinn'],
      es: ['alto de cara', 'del pelo al mentón'],
      fr: ['hauteur du visage', 'des cheveux au menton'],
    },
    ...visitRange('face-height'),
    source: 'Range: our choice; 180–190 mm typical (from memory, no published figure was found).',
  },
  {
    id: 'tooth-show',
    label: 'Upper teeth below the resting lip',
    unit: 'mm',
    names: {
      en: ['tooth show', 'teeth below lip'],
      de: ['zähne sichtbar', 'zähne unter lippe'],
      es: ['dientes visibles', 'dientes bajo el labio'],
      fr: ['dents visibles', 'dents sous la lèvre'],
    },
    plausible: [0, 1000],
    expected: [0, 300],
    source: 'Expected 0–2 mm at rest (from memory), one more allowed by our choice.',
  },
  {
    id: 'overjet',
    label: 'Horizontal overlap in front',
    unit: 'mm',
    names: {
      en: ['overjet', 'horizontal overlap'],
      de: ['overjet', 'sagittale stufe', 'horizontaler überbiss'],
      es: ['resalte', 'resalte horizontal'],
      fr: ['surplomb', 'recouvrement horizontal'],
    },
    plausible: [0, 1500],
    expected: [0, 400],
    source: 'Typical 1–2 mm in complete dentures (from memory); limits: our choice.',
  },
  {
    id: 'overbite',
    label: 'Vertical overlap in front',
    unit: 'mm',
    names: {
      en: ['overbite', 'vertical overlap'],
      de: ['overbite', 'überbiss', 'vertikaler überbiss'],
      es: ['sobremordida', 'entrecruzamiento'],
      fr: ['recouvrement', 'recouvrement vertical'],
    },
    plausible: [0, 1000],
    expected: [0, 200],
    source: 'Typical 0.5–1 mm in complete dentures (from memory); limits: our choice.',
  },
  {
    id: 'seal-depth',
    label: 'Depth of the rear seal',
    unit: 'mm',
    names: {
      en: ['seal depth', 'rear seal'],
      de: ['dammtiefe', 'tiefe der abdämmung'],
      es: ['profundidad del sellado', 'sellado posterior'],
      fr: ['profondeur du joint', 'joint postérieur'],
    },
    plausible: [0, 400],
    expected: [50, 150],
    source: 'Expected 0.5–1.5 mm (from memory); outer limit: our choice.',
  },
];

const CENTRIC = 'Range: our choice: the tracing sheet is some centimetres wide and is read from its lower left corner.';
const onSheet = { unit: 'mm', plausible: [0, 10000], expected: [100, 6000], source: CENTRIC } as const;

const centric: readonly ReadingDef[] = [
  {
    ...onSheet,
    id: 'tracing-1-x',
    label: 'First tracing, apex across',
    names: {
      en: ['first apex across'],
      de: ['erste spitze quer'],
      es: ['primer vértice horizontal'],
      fr: ['première pointe horizontale'],
    },
  },
  {
    ...onSheet,
    id: 'tracing-1-y',
    label: 'First tracing, apex up',
    names: {
      en: ['first apex up'],
      de: ['erste spitze hoch'],
      es: ['primer vértice vertical'],
      fr: ['première pointe verticale'],
    },
  },
  {
    ...onSheet,
    id: 'tracing-2-x',
    label: 'Second tracing, apex across',
    names: {
      en: ['second apex across'],
      de: ['zweite spitze quer'],
      es: ['segundo vértice horizontal'],
      fr: ['deuxième pointe horizontale'],
    },
  },
  {
    ...onSheet,
    id: 'tracing-2-y',
    label: 'Second tracing, apex up',
    names: {
      en: ['second apex up'],
      de: ['zweite spitze hoch'],
      es: ['segundo vértice vertical'],
      fr: ['deuxième pointe verticale'],
    },
  },
  {
    ...onSheet,
    id: 'tracing-3-x',
    label: 'Third tracing, apex across',
    names: {
      en: ['third apex across'],
      de: ['dritte spitze quer'],
      es: ['tercer vértice horizontal'],
      fr: ['troisième pointe horizontale'],
    },
  },
  {
    ...onSheet,
    id: 'tracing-3-y',
    label: 'Third tracing, apex up',
    names: {
      en: ['third apex up'],
      de: ['dritte spitze hoch'],
      es: ['tercer vértice vertical'],
      fr: ['troisième pointe verticale'],
    },
  },
  {
    ...onSheet,
    id: 'leg-right-x',
    label: 'End of the right leg, across',
    names: {
      en: ['right leg across'],
      de: ['rechter schenkel quer'],
      es: ['rama derecha horizontal'],
      fr: ['branche droite horizontale'],
    },
  },
  {
    ...onSheet,
    id: 'leg-right-y',
    label: 'End of the right leg, up',
    names: {
      en: ['right leg up'],
      de: ['rechter schenkel hoch'],
      es: ['rama derecha vertical'],
      fr: ['branche droite verticale'],
    },
  },
  {
    ...onSheet,
    id: 'leg-left-x',
    label: 'End of the left leg, across',
    names: {
      en: ['left leg across'],
      de: ['linker schenkel quer'],
      es: ['rama izquierda horizontal'],
      fr: ['branche gauche horizontale'],
    },
  },
  {
    ...onSheet,
    id: 'leg-left-y',
    label: 'End of the left leg, up',
    names: {
      en: ['left leg up'],
      de: ['linker schenkel hoch'],
      es: ['rama izquierda vertical'],
      fr: ['branche gauche verticale'],
    },
  },
  {
    id: 'axis-incisal',
    label: 'Hinge axis to incisal edge',
    unit: 'mm',
    names: {
      en: ['axis distance', 'axis to edge'],
      de: ['achsabstand', 'achse zu schneidekante'],
      es: ['distancia al eje', 'eje a borde incisal'],
      fr: ["distance à l'axe", "de l'axe au bord"],
    },
    plausible: [7000, 16000],
    expected: [8500, 14000],
    source:
      'Triangle side 101.6 mm in the 2017 glossary, 114–125 mm measured over skin in 140 people (text seen); limits: our choice.',
  },
];

const points = (most: number) => ({ unit: 'points', plausible: [0, most], expected: [0, most] }) as const;
const SCORE = 'Scale from Kapur, J Prosthet Dent 1967;18:550 (from memory): ';

const fitted: readonly ReadingDef[] = [
  {
    ...points(300),
    id: 'retention-upper',
    label: 'Upper retention, 0 to 3',
    names: {
      en: ['upper retention', 'upper hold'],
      de: ['halt oben', 'retention oben'],
      es: ['retención superior'],
      fr: ['rétention haute', 'rétention du haut'],
    },
    source: `${SCORE}0 none, 1 slight, 2 moderate, 3 good.`,
  },
  {
    ...points(200),
    id: 'stability-upper',
    label: 'Upper stability, 0 to 2',
    names: {
      en: ['upper stability'],
      de: ['lagestabilität oben', 'stabilität oben'],
      es: ['estabilidad superior'],
      fr: ['stabilité haute', 'stabilité du haut'],
    },
    source: `${SCORE}0 none, 1 some, 2 enough.`,
  },
  {
    ...points(300),
    id: 'retention-lower',
    label: 'Lower retention, 0 to 3',
    names: {
      en: ['lower retention', 'lower hold'],
      de: ['halt unten', 'retention unten'],
      es: ['retención inferior'],
      fr: ['rétention basse', 'rétention du bas'],
    },
    source: `${SCORE}0 none, 1 slight, 2 moderate, 3 good.`,
  },
  {
    ...points(200),
    id: 'stability-lower',
    label: 'Lower stability, 0 to 2',
    names: {
      en: ['lower stability'],
      de: ['lagestabilität unten', 'stabilität unten'],
      es: ['estabilidad inferior'],
      fr: ['stabilité basse', 'stabilité du bas'],
    },
    source: `${SCORE}0 none, 1 some, 2 enough.`,
  },
  {
    id: 'pin-change',
    label: 'Pin change after grinding',
    unit: 'mm',
    names: {
      en: ['pin change', 'pin difference'],
      de: ['stiftänderung', 'stützstift'],
      es: ['cambio del vástago', 'vástago'],
      fr: ['écart de tige', 'tige incisive'],
    },
    plausible: [0, 1000],
    expected: [0, 200],
    source: CHOICE,
  },
];

const SORE = {
  size: {
    unit: 'mm',
    plausible: [50, 4000],
    expected: [100, 1000],
    source: 'Sore areas of 1–8 mm were reported (Rev Clin Periodoncia 2016;9:48, text seen); limits: our choice.',
  },
  weeks: {
    unit: 'weeks',
    plausible: [0, 52000],
    expected: [0, 200],
    source:
      'Over 2 weeks is flagged: an ulcer that outlasts two to three weeks of relief is for referral (NICE NG12 says more than 3 weeks unexplained, read on secondary pages). Local rules decide.',
  },
} as const;

const sore: readonly ReadingDef[] = [
  {
    ...SORE.size,
    id: 'sore-1-size',
    label: 'First sore area, size',
    names: {
      en: ['first sore size'],
      de: ['erste druckstelle größe'],
      es: ['primera zona tamaño'],
      fr: ['première zone taille'],
    },
  },
  {
    ...SORE.weeks,
    id: 'sore-1-weeks',
    label: 'First sore area, present for',
    names: {
      en: ['first sore weeks'],
      de: ['erste druckstelle wochen'],
      es: ['primera zona semanas'],
      fr: ['première zone semaines'],
    },
  },
  {
    ...SORE.size,
    id: 'sore-2-size',
    label: 'Second sore area, size',
    names: {
      en: ['second sore size'],
      de: ['zweite druckstelle größe'],
      es: ['segunda zona tamaño'],
      fr: ['deuxième zone taille'],
    },
  },
  {
    ...SORE.weeks,
    id: 'sore-2-weeks',
    label: 'Second sore area, present for',
    names: {
      en: ['second sore weeks'],
      de: ['zweite druckstelle wochen'],
      es: ['segunda zona semanas'],
      fr: ['deuxième zone semaines'],
    },
  },
  {
    ...SORE.size,
    id: 'sore-3-size',
    label: 'Third sore area, size',
    names: {
      en: ['third sore size'],
      de: ['dritte druckstelle größe'],
      es: ['tercera zona tamaño'],
      fr: ['troisième zone taille'],
    },
  },
  {
    ...SORE.weeks,
    id: 'sore-3-weeks',
    label: 'Third sore area, present for',
    names: {
      en: ['third sore weeks'],
      de: ['dritte druckstelle wochen'],
      es: ['tercera zona semanas'],
      fr: ['troisième zone semaines'],
    },
  },
  {
    ...SORE.size,
    id: 'sore-4-size',
    label: 'Fourth sore area, size',
    names: {
      en: ['fourth sore size'],
      de: ['vierte druckstelle größe'],
      es: ['cuarta zona tamaño'],
      fr: ['quatrième zone taille'],
    },
  },
  {
    ...SORE.weeks,
    id: 'sore-4-weeks',
    label: 'Fourth sore area, present for',
    names: {
      en: ['fourth sore weeks'],
      de: ['vierte druckstelle wochen'],
      es: ['cuarta zona semanas'],
      fr: ['quatrième zone semaines'],
    },
  },
];

const anytime: readonly ReadingDef[] = [
  {
    id: 'water-temperature',
    label: 'Water temperature of the mix',
    unit: '°C',
    names: {
      en: ['water temperature', 'water'],
      de: ['wassertemperatur', 'wasser'],
      es: ['temperatura del agua', 'agua'],
      fr: ["température de l'eau", 'eau'],
    },
    plausible: [200, 6000],
    expected: [1800, 2500],
    source: 'Our choice around 21 to 23 °C, the temperatures handbooks and tests use (second-hand).',
    anytime: true,
  },
];

export const readingDefs: readonly ReadingDef[] = [
  ...anytime,
  ...ridgeAndTissue,
  ...sulcus,
  ...heights,
  ...lipAndTeeth,
  ...centric,
  ...fitted,
  ...sore,
];
