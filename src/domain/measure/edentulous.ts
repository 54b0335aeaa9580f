/**
 * Prosthodontic Diagnostic Index for complete edentulism: four main criteria and the modifiers; the most complex single
 * criterion decides. Describes how demanding a treatment is, not what a patient has.
 */
import { badAmount } from './check.ts';
import { known, refuse, type Measured, type Refused } from './result.ts';
import type { SourceStatus } from './sources.ts';

export type ComplexityClass = 'I' | 'II' | 'III' | 'IV';

export interface ClassInput {
  /** Least height of the lower jaw on the radiograph, millimetres. */
  readonly boneMm?: number;
  /** Was the radiograph's magnification taken out? */
  readonly boneCorrected?: boolean;
  /** Relation of the ridges: I teeth sit over the ridge, II outside it, III crossbite needed. */
  readonly relation?: 'I' | 'II' | 'III';
  readonly maxilla?: 'A' | 'B' | 'C' | 'D';
  readonly muscle?: 'A' | 'B' | 'C' | 'D' | 'E';
  /** Room between the ridges, millimetres. */
  readonly interarchMm?: number;
  /** Symptoms of the jaw joints or muscles. */
  readonly tmd?: boolean;
  readonly surgery?: 'none' | 'minor' | 'major';
  readonly psychosocial?: 'none' | 'minor' | 'moderate' | 'major';
  readonly systemic?: 'none' | 'mild' | 'moderate' | 'severe';
  readonly tongue?: 'usual' | 'large' | 'hyperactive';
  readonly gag?: 'usual' | 'hyperactive' | 'medicated';
  /** Numbness or altered feeling. */
  readonly paraesthesia?: boolean;
  /** Defect of jaw or face, from birth or acquired. */
  readonly defect?: boolean;
  /** Trouble controlling movement. */
  readonly ataxia?: boolean;
  /** Treated repeatedly without being content. */
  readonly refractory?: boolean;
}

export interface ClassCriterion {
  readonly criterion: string;
  readonly value: string;
  readonly class: ComplexityClass;
  /** How far the source of this single rule was seen. */
  readonly status: SourceStatus;
}

export interface EdentulousClass {
  readonly class: ComplexityClass;
  /** False while a main criterion is missing: the class is then only a lower bound. */
  readonly complete: boolean;
  readonly missing: readonly string[];
  readonly decidedBy: readonly string[];
  readonly criteria: readonly ClassCriterion[];
  /** "Class III, decided by interarch space" or "Incomplete, at least class III …". */
  readonly text: string;
}

const ORDER: readonly ComplexityClass[] = ['I', 'II', 'III', 'IV'];
const level = (c: ComplexityClass) => ORDER.indexOf(c);

/**
 * Class of the bone height: at least 21 mm I, at least 16 II, at least 11 III, below IV. The published bands are whole
 * numbers with gaps (20–21, 15–16, 10–11); a height in a gap counts as the more complex class. Millimetres; refuses what
 * is no height. Sources: pdi, pdi-rounding.
 */
export function boneClass(boneMm: number): Measured<ComplexityClass> {
  const bad = badAmount(boneMm, 'Bone height');
  if (bad !== undefined) return bad;
  const value = boneMm >= 21 ? 'I' : boneMm >= 16 ? 'II' : boneMm >= 11 ? 'III' : 'IV';
  return known({ value, inputs: [`bone height ${boneMm} mm`], source: 'pdi-rounding' });
}

/** Room between the ridges: 18 to 20 mm counts III, less IV, more adds nothing (coding ours). */
function interarchClass(mm: number): ComplexityClass {
  return mm > 20 ? 'I' : mm >= 18 ? 'III' : 'IV';
}

type Table = Readonly<Record<string, ComplexityClass>>;

interface Rule {
  readonly field: keyof ClassInput;
  readonly name: string;
  readonly main?: true;
  readonly table: Table;
  readonly status: SourceStatus;
}

const present: Table = { true: 'IV', false: 'I' };

const RULES: readonly Rule[] = [
  {
    field: 'relation',
    name: 'jaw relation',
    main: true,
    table: { I: 'I', II: 'III', III: 'III' },
    status: 'text seen',
  },
  {
    field: 'maxilla',
    name: 'upper ridge',
    main: true,
    table: { A: 'I', B: 'II', C: 'III', D: 'IV' },
    status: 'from memory',
  },
  {
    field: 'muscle',
    name: 'muscle attachment',
    main: true,
    table: { A: 'I', B: 'I', C: 'III', D: 'IV', E: 'IV' },
    status: 'from memory',
  },
  { field: 'tmd', name: 'joint or muscle symptoms', table: { true: 'III', false: 'I' }, status: 'text seen' },
  { field: 'surgery', name: 'surgery', table: { none: 'I', minor: 'III', major: 'IV' }, status: 'second-hand' },
  {
    field: 'psychosocial',
    name: 'psychosocial',
    table: { none: 'I', minor: 'II', moderate: 'III', major: 'IV' },
    status: 'second-hand',
  },
  {
    field: 'systemic',
    name: 'systemic disease',
    table: { none: 'I', mild: 'II', moderate: 'III', severe: 'IV' },
    status: 'second-hand',
  },
  { field: 'tongue', name: 'tongue', table: { usual: 'I', large: 'III', hyperactive: 'IV' }, status: 'from memory' },
  {
    field: 'gag',
    name: 'gag reflex',
    table: { usual: 'I', hyperactive: 'III', medicated: 'IV' },
    status: 'second-hand',
  },
  { field: 'paraesthesia', name: 'altered feeling', table: present, status: 'from memory' },
  { field: 'defect', name: 'jaw or face defect', table: present, status: 'from memory' },
  { field: 'ataxia', name: 'movement control', table: present, status: 'from memory' },
  { field: 'refractory', name: 'refractory', table: present, status: 'from memory' },
];

function fromTables(input: ClassInput): readonly ClassCriterion[] | Refused {
  const found: ClassCriterion[] = [];
  for (const { field, name, table, status } of RULES) {
    const given = input[field];
    if (given === undefined) continue;
    const value = String(given);
    if (!Object.hasOwn(table, value))
      return refuse('unknown', `“${value}” is no ${name}; known: ${Object.keys(table).join(', ')}.`);
    found.push({ criterion: name, value, class: table[value]!, status });
  }
  return found;
}

function fromHeights({ boneMm, interarchMm }: ClassInput): readonly ClassCriterion[] | Refused {
  const found: ClassCriterion[] = [];
  if (boneMm !== undefined) {
    const bone = boneClass(boneMm);
    if (!bone.ok) return bone;
    found.push({ criterion: 'bone height', value: `${boneMm} mm`, class: bone.value, status: 'text seen' });
  }
  if (interarchMm !== undefined) {
    const bad = badAmount(interarchMm, 'Room between the ridges');
    if (bad !== undefined) return bad;
    const value = interarchClass(interarchMm);
    found.push({ criterion: 'room between the ridges', value: `${interarchMm} mm`, class: value, status: 'text seen' });
  }
  return found;
}

function boneNote({ boneMm, boneCorrected }: ClassInput): readonly string[] {
  if (boneMm === undefined) return [];
  if (boneCorrected === undefined) return ['bone height: not said whether magnification was corrected'];
  return [boneCorrected ? 'bone height corrected for magnification' : 'bone height NOT corrected for magnification'];
}

const MAIN = ['bone height', ...RULES.filter((rule) => rule.main).map((rule) => rule.name)];

/**
 * Class of a patient without teeth by the most complex criterion known. With a main criterion missing the class is a
 * lower bound ("incomplete, at least class N"). Heights in millimetres. Refuses an input without any criterion, unknown
 * letters and what is no height. Future treatment must not lower it. Sources: pdi, pdi-rounding.
 */
export function edentulousClass(input: ClassInput): Measured<EdentulousClass> {
  const heights = fromHeights(input);
  if ('ok' in heights) return heights;
  const letters = fromTables(input);
  if ('ok' in letters) return letters;
  const criteria = [...heights, ...letters];
  if (criteria.length === 0) return refuse('missing', 'No criterion is known yet.');
  const top = criteria.reduce<ComplexityClass>((most, c) => (level(c.class) > level(most) ? c.class : most), 'I');
  const decidedBy = criteria.filter((c) => c.class === top).map((c) => c.criterion);
  const missing = MAIN.filter((name) => !criteria.some((c) => c.criterion === name));
  const complete = missing.length === 0;
  const lead = complete ? `Class ${top}` : `Incomplete, at least class ${top}`;
  const rest = complete ? '' : `; missing: ${missing.join(', ')}`;
  const text = `${lead}, decided by ${decidedBy.join(', ')}${rest}.`;
  const inputs = [...criteria.map((c) => `${c.criterion} ${c.value}`), ...boneNote(input)];
  return known({ value: { class: top, complete, missing, decidedBy, criteria, text }, inputs, source: 'pdi' });
}
