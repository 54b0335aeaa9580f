/** Where every figure and rule comes from, and how far that source was seen. Shown on demand beside each result. */

export type SourceStatus =
  /** The text of the source was read. */
  | 'text seen'
  /** Quoted from a page, review or abstract that quotes the source. */
  | 'second-hand'
  /** Remembered from handbooks; check before citing. */
  | 'from memory'
  /** How the trade works; no single source. */
  | 'common practice'
  /** A limit or convention this program chose. */
  | 'our choice'
  /** Follows by arithmetic or geometry from its inputs. */
  | 'derived';

export interface SourceEntry {
  readonly citation: string;
  readonly status: SourceStatus;
}

const height = {
  'glossary-rest-space': {
    citation:
      'Interocclusal rest distance is rest vertical dimension less occlusal vertical dimension. The Glossary of Prosthodontic Terms, 9th ed., J Prosthet Dent 2017;117(5S):e1–e105.',
    status: 'text seen',
  },
  'rest-space-bands': {
    citation: 'Rest space 2 to 4 mm as the usual range: teaching convention; the glossary gives no number.',
    status: 'second-hand',
  },
  'repeat-rule': {
    citation: 'At least three readings; range up to 1.0 mm accepted, up to 2.0 mm two more, beyond that repeat all.',
    status: 'our choice',
  },
  'summary-statistics': {
    citation: 'Mean, median, range, sample standard deviation and standard error, as in any statistics text.',
    status: 'common practice',
  },
  'rest-space-spread': {
    citation: 'Standard deviation of a difference of two means: s·√(1/n₁ + 1/n₂), s pooled over both sets.',
    status: 'derived',
  },
  'single-reading-sd': {
    citation:
      'Assumed SD of one reading between skin marks, 1.0 mm: scatter within a sitting is commonly quoted as 1 to 2 mm; no figure was verified.',
    status: 'our choice',
  },
  'dixon-q': {
    citation:
      'Dixon’s Q (r10): Dean & Dixon, Anal Chem 1951;23:636; critical values after Rorabacher, Anal Chem 1991;63:139, as tabulated in an open chemistry reference appendix.',
    status: 'second-hand',
  },
  'modified-z': {
    citation:
      'Modified z-score 0.6745·(x − median)/MAD, limit 3.5: Iglewicz & Hoaglin, How to Detect and Handle Outliers, 1993.',
    status: 'from memory',
  },
  'student-t': { citation: 'Two-sided 95 % points of Student’s t, standard table.', status: 'from memory' },
  'rest-without-bases': {
    citation:
      'Rest height of 52 people without teeth: 67.90 mm without dentures, 70.33 mm with both. J Istanbul Univ Fac Dent 30(3):121–124.',
    status: 'text seen',
  },
  'facial-measure': {
    citation:
      'Pupil line to the line of the closed lips equals base of nose to under the chin at occlusal height. Willis, J Am Dent Assoc 1935;22:1874.',
    status: 'from memory',
  },
  'facial-measure-limit': { citation: 'Facial measure: agreement within 3 mm.', status: 'our choice' },
  'speaking-space': {
    citation:
      'Closest speaking space 1 to 2 mm at “s”: Pound, as given in The Glossary of Prosthodontic Terms, 9th ed. (2017); method of Silverman, J Prosthet Dent 1953;3:193.',
    status: 'text seen',
  },
  'speaking-space-wearers': {
    citation:
      'Closest speaking space of 33 denture wearers 2.61 ± 1.53 mm, of 61 dentate 2.22 ± 1.38 mm. J Appl Oral Sci 2005;13(4).',
    status: 'text seen',
  },
  'old-denture-change': {
    citation: 'Change of height per new denture held to 4 to 5 mm against the present dentures.',
    status: 'from memory',
  },
  'difference-only': {
    citation:
      'Heights between skin marks are compared only as differences within one set of marks (after Atwood, J Prosthet Dent 1956;6:504).',
    status: 'our choice',
  },
} as const satisfies Readonly<Record<string, SourceEntry>>;

const hinge = {
  'hinge-model': {
    citation:
      'Rotation about the hinge axis in the sagittal plane, solved exactly; Bonwill triangle 101.6 mm (glossary), Balkwill angle 22.5° (teaching mean, range quoted by Christensen, J Prosthet Dent 1960), positions of the marks assumed.',
    status: 'derived',
  },
  'hinge-factors': {
    citation:
      'Rim change 0.83 (0.80 to 1.00) and first molar 0.52 (0.42 to 0.62) of the chin change; from the hinge model with its assumptions varied.',
    status: 'derived',
  },
  bonwill: {
    citation:
      'Equilateral triangle of 4 in (101.6 mm) between condyles and lower incisal contact. Glossary of Prosthodontic Terms, 9th ed.',
    status: 'text seen',
  },
  balkwill: {
    citation:
      'Angle of the triangle to the occlusal plane: 22–30° (Balkwill), 21–22° (Köhler), 20° (Hart), mean 18° (Bergström), as quoted by Christensen, J Prosthet Dent 1960.',
    status: 'text seen',
  },
  'pin-rule': {
    citation:
      'Second molar, incisors and incisal pin open as 1 : 2 : 3. Kaiser & Schelb, Geometric study of incisal guide pin opening, J Prosthet Dent.',
    status: 'text seen',
  },
  'pin-limit': {
    citation:
      'Pin raised 3 and 6 mm: average mounting, facebow mounting and mouth did not differ (14 people). Dent J 2022;10:212. Warned above 6 mm.',
    status: 'text seen',
  },
} as const satisfies Readonly<Record<string, SourceEntry>>;

const classes = {
  pdi: {
    citation:
      'Prosthodontic Diagnostic Index for complete edentulism: McGarry et al., J Prosthodont 1999;8:27–39; appendix B of the glossary, 9th ed. Letters of single types partly second-hand or from memory.',
    status: 'text seen',
  },
  'pdi-rounding': {
    citation: 'Bone height between two bands counts as the more difficult class: 21, 16 and 11 mm are lower limits.',
    status: 'our choice',
  },
  'ridge-forms': {
    citation: 'Ridge forms I to VI: Cawood & Howell, Int J Oral Maxillofac Surg 1988;17:232–236.',
    status: 'text seen',
  },
  'bone-loss': {
    citation:
      'Original height of the lower jaw as a multiple of the distance from lower border to mental foramen: ×3 and thirds, Wical & Swoope, J Prosthet Dent 1974.',
    status: 'from memory',
  },
  'steady-loss': {
    citation: 'Yearly loss of bone × years; rates of single patients in Atwood, J Prosthet Dent 1971;26:266.',
    status: 'derived',
  },
  'palatal-form': {
    citation: 'Soft palate angle under 10°, 10 to 45°, over 45°: House, as quoted on a teaching page.',
    status: 'second-hand',
  },
} as const satisfies Readonly<Record<string, SourceEntry>>;

const materials = {
  leaflet: {
    citation: 'Figures of the material’s own leaflet, as entered by the practice.',
    status: 'common practice',
  },
  'iso-4823': {
    citation:
      'ISO 4823 elastomeric impression materials, as quoted in a teaching dossier: types by consistency, detail, recovery, strain, dimensional change; no fixed working time.',
    status: 'second-hand',
  },
  'iso-21563': {
    citation: 'ISO 21563:2021 hydrocolloid impression materials: detail 50 µm, recovery ≥ 95 %, tear ≥ 0.38 N/mm.',
    status: 'second-hand',
  },
  'alginate-room-temperature': {
    citation:
      'Setting time by room temperature, 23 to 31 °C: Irnawati & Sunarintyas, Dent J (Majalah Ked Gigi) 2009;42(3).',
    status: 'text seen',
  },
  'alginate-water-temperature': {
    citation: 'Setting time by water temperature, 13 to 28 °C: Indrani & Matram, Dent J (Majalah Ked Gigi) 2013;46(1).',
    status: 'text seen',
  },
  'alginate-wide-temperature': {
    citation: 'Setting time at 7, 19.5 and 45 °C: conference abstract 142893.',
    status: 'text seen',
  },
  'limit-size': { citation: 'Per cent limits of the standards turned into millimetres.', status: 'derived' },
  'denture-soak': {
    citation:
      'Denture care guideline, Felton et al., J Prosthodont 2011;20(S1):S1–S12, points as reproduced by a laboratory page: hypochlorite at most 10 min, store in water.',
    status: 'second-hand',
  },
  'temperature-limit': { citation: 'Warned from 3 °C off the leaflet’s temperature.', status: 'our choice' },
  'ratio-limit': { citation: 'Warned beyond 5 % off the leaflet’s powder to water ratio.', status: 'our choice' },
  'planned-back': {
    citation:
      'Seated 15 s before the leaflet’s working time ends, the tray loaded 20 s before that, neither more than a quarter of the time after mixing. The order is common practice; no published figure for these margins was found.',
    status: 'our choice',
  },
  'pour-windows': {
    citation:
      'Pour windows by class of material: Walker, Angle Orthod 2010;80:1110 and others; handbook limits where no study was seen.',
    status: 'second-hand',
  },
  disinfection: {
    citation:
      'Exposure by class of material: studies of 5 to 10 min on alginate, 10 min on silicones (texts seen); handbook limits for the rest.',
    status: 'from memory',
  },
} as const satisfies Readonly<Record<string, SourceEntry>>;

const trays = {
  'tray-clearance': { citation: 'Room for alginate between tray and ridge, 4 to 6 mm a side.', status: 'from memory' },
  'tray-size': {
    citation: 'Inner width at least ridge width plus twice the clearance; over 4 mm more: build up.',
    status: 'our choice',
  },
  'tray-border': { citation: 'Custom tray 2 to 3 mm short of the sulcus at rest: teaching page.', status: 'text seen' },
  'tray-spacer': {
    citation:
      'Spacer by material: wax two sheets (3 mm) for alginate from a clinician’s page, the others from handbooks.',
    status: 'from memory',
  },
} as const satisfies Readonly<Record<string, SourceEntry>>;

const teeth = {
  'sixteenth-width': {
    citation:
      'Central incisor width a sixteenth of face width: Berry 1906; not confirmed in Radia et al., J Prosthet Dent 2016;115:741.',
    status: 'text seen',
  },
  'face-length': {
    citation: 'Central length a twentieth (Berry 1906) or a sixteenth (House & Loop 1939) of face length.',
    status: 'from memory',
  },
  'six-from-face': { citation: 'Six upper front teeth: face width / 3.3 or / 3.36.', status: 'from memory' },
  'six-from-nose': {
    citation:
      'Nose width × 1.31 for six on the curve, × 1.03 for canine tips: Hoffman, Bomberg & Hatch, J Prosthet Dent 1986;55:219.',
    status: 'from memory',
  },
  'six-nose-plus-seven': {
    citation: 'Nose width + 7 mm for six in a straight line: Mavroskoufis & Ritchie 1981.',
    status: 'from memory',
  },
  'inner-canthal': {
    citation: 'Central width = inner canthal distance × 0.618 / 2: Abdullah, J Prosthet Dent 2002;88:16–20.',
    status: 'text seen',
  },
  interpupillary: {
    citation: 'Central width = interpupillary distance / 6.6: Cesario & Latta 1984.',
    status: 'from memory',
  },
  'lower-to-upper-six': {
    citation: 'Upper six = lower six × 1.30: Johnson’s three methods 1.29, 1.30, 1.31.',
    status: 'text seen',
  },
  commissures: {
    citation:
      'Marks at the corners of the mouth, along the rim’s curve, bound the six: Lieb, Silverman & Garfinkel 1967; Baker et al., J Prosthet Dent 2011;105:44.',
    status: 'second-hand',
  },
  'tooth-spread': { citation: 'More than 4 mm between the rules: the clinician judges.', status: 'our choice' },
  'posterior-space': {
    citation: 'No lower tooth on the rising ridge before the retromolar pad.',
    status: 'from memory',
  },
  'iso-3950': { citation: 'ISO 3950 two-digit designation of teeth.', status: 'from memory' },
} as const satisfies Readonly<Record<string, SourceEntry>>;

const planeAndTracing = {
  'pad-height': {
    citation: 'Rear end of the lower plane at half or two thirds of the retromolar pad; textbooks differ.',
    status: 'from memory',
  },
  'incisal-guidance': {
    citation: 'Incisal guidance angle = arctangent of vertical over horizontal overlap.',
    status: 'derived',
  },
  'guidance-limit': { citation: 'Incisal guidance above 30° is flagged.', status: 'our choice' },
  'camper-slope': {
    citation:
      'Slope from two distances a run apart; over a face 29.9 and 31.3 mm in 316 people, Woelfel, Igarashi & Dong, J Adv Prosthodont 2014;6(6).',
    status: 'derived',
  },
  'plane-limits': { citation: 'Plane to pupils and to ala–tragus accepted within 2°.', status: 'our choice' },
  'rim-heights': { citation: 'Rim heights and show of upper front teeth: handbook.', status: 'from memory' },
  'arrow-point': {
    citation:
      'Legs by total least squares; apex where they cross; acceptance limits ours. Apex indicates centric relation: glossary, 9th ed.',
    status: 'our choice',
  },
  'arrow-lines': {
    citation: 'Legs by total least squares, apex where they cross, angle between them, scatter about the centroid.',
    status: 'derived',
  },
  'lateral-guidance': {
    citation:
      'Lateral guidance rule: lateral = sagittal / 8 + 12 degrees (1926/1930); accuracy questioned by both studies seen.',
    status: 'text seen',
  },
  'protrusive-record': {
    citation: 'Condylar inclination from the gap that opens in protrusion; geometry.',
    status: 'derived',
  },
} as const satisfies Readonly<Record<string, SourceEntry>>;

const rest = {
  'plausible-ranges': {
    citation: 'Limits set from ±3 SD of published means where a spread was published, otherwise from common practice.',
    status: 'our choice',
  },
  consistency: { citation: 'Internal consistency of readings taken together.', status: 'our choice' },
  'retention-score': {
    citation: 'Retention and stability score: Kapur, J Prosthet Dent 1967;18:550.',
    status: 'from memory',
  },
  'review-days': { citation: 'Reviews after 24–48 h, 1 week, 4 weeks, then yearly.', status: 'from memory' },
  'referral-duration': {
    citation:
      'Unexplained mouth ulcer over 3 weeks: suspected-cancer referral considered. NICE NG12 (2015, updated), secondary pages seen.',
    status: 'second-hand',
  },
} as const satisfies Readonly<Record<string, SourceEntry>>;

/** Source id → citation and status. */
export const sources = {
  ...height,
  ...hinge,
  ...classes,
  ...materials,
  ...trays,
  ...teeth,
  ...planeAndTracing,
  ...rest,
};

export type SourceId = keyof typeof sources;
