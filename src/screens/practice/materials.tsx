/** The practice's materials: kind, times of the leaflet, portion, lot and last day of use. */
import { kindLabel, MATERIAL_KINDS } from '../../domain/protocol/kinds.ts';
import { lotText } from '../../domain/protocol/lots.ts';
import type { Material } from '../../domain/protocol/types.ts';
import type { FieldSpec, Written } from '../parts/Form.tsx';
import { EntryList, GENERIC } from './EntryList.tsx';
import {
  firstWhy,
  freshId,
  given,
  readAmount,
  readDay,
  readWhole,
  readWords,
  showNumber,
  type Read,
} from './fields.ts';
import type { ListProps } from './lists.tsx';

type Times = 'mixS' | 'workingS' | 'removeS' | 'pourFromMin' | 'pourWithinMin';

const WHOLE: readonly (readonly [key: Times, label: string])[] = [
  ['mixS', 'Mixing ends, seconds'],
  ['workingS', 'Working time ends, seconds'],
  ['removeS', 'Remove from the mouth, seconds'],
  ['pourFromMin', 'Pour not before, minutes'],
  ['pourWithinMin', 'Pour within, minutes'],
];

const POWDER = 'Powder of a portion, g';
const WATER = 'Water of a portion, ml';
const LESS = 'Water left out, %';
const WARM = 'Water temperature, °C';
const LOT = 'Lot';
const DAY = 'Last day of use';

const refused = (why: string) => ({ ok: false, why }) as const;
const at = (written: Written, label: string) => written[label] ?? '';

type Mixed = Pick<Material, 'mix' | 'waterC'>;

/** Powder and water go together; neither is wanted for what is not mixed with water. */
function readMix(written: Written): Read<Mixed> {
  const [powder, water, less, warm] = [POWDER, WATER, LESS, WARM].map((label) => readAmount(at(written, label), label));
  const why = firstWhy([powder!, water!, less!, warm!]);
  if (why !== undefined || !powder!.ok || !water!.ok || !less!.ok || !warm!.ok) return refused(why ?? '');
  const waterC = warm!.value === undefined ? {} : { waterC: warm!.value };
  if (powder!.value === undefined && water!.value === undefined) return { ok: true, value: waterC };
  if (powder!.value === undefined || water!.value === undefined)
    return refused('Powder and water of a portion are wanted together, or neither.');
  const lessWater = less!.value === undefined || less!.value === 0 ? {} : { lessWater: less!.value / 100 };
  return { ok: true, value: { mix: { powderG: powder!.value, waterMl: water!.value, ...lessWater }, ...waterC } };
}

type Timed = Pick<Material, Times>;

function readTimes(written: Written): Read<Timed> {
  const reads = WHOLE.map(([key, label]) => [key, readWhole(at(written, label), label)] as const);
  const why = firstWhy(reads.map(([, one]) => one));
  if (why !== undefined) return refused(why);
  return { ok: true, value: Object.fromEntries(reads.map(([key, one]) => [key, one.ok ? one.value : 0])) as Timed };
}

const FIGURES = ['mix', 'waterC', ...WHOLE.map(([key]) => key)] as const;

/** Figures that were changed are the leaflet's; those never touched stay what they were. */
function sourceOf(before: Material | undefined, figures: Timed & Mixed): Pick<Material, 'generic' | 'source'> {
  const same = (key: (typeof FIGURES)[number]) => JSON.stringify(figures[key]) === JSON.stringify(before?.[key]);
  if (before !== undefined && FIGURES.every(same)) return { generic: before.generic, source: before.source };
  return { generic: false, source: 'The leaflet, as entered by the practice.' };
}

function readMaterial(written: Written, before: Material | undefined, taken: readonly string[]): Read<Material> {
  const name = readWords(at(written, 'Name'), 'Name');
  const expires = readDay(at(written, DAY), DAY);
  const times = readTimes(written);
  const mix = readMix(written);
  const kind = at(written, 'Kind');
  const why = firstWhy([name, times, mix, expires]);
  if (why !== undefined || !name.ok || !expires.ok || !times.ok || !mix.ok) return refused(why ?? '');
  if (kind === '') return refused('Kind: one of them is wanted.');
  const lot = at(written, LOT).trim();
  return {
    ok: true,
    value: {
      id: before?.id ?? freshId(name.value, taken),
      name: name.value,
      class: kind,
      ...times.value,
      ...mix.value,
      ...(lot === '' ? {} : { lot }),
      ...(expires.value === '' ? {} : { expires: expires.value }),
      ...sourceOf(before, { ...times.value, ...mix.value }),
    },
  };
}

function fieldsOf(m: Material | undefined): readonly FieldSpec[] {
  const known = MATERIAL_KINDS.some((kind) => kind.id === m?.class);
  const own = m === undefined || known ? [] : [{ id: m.class, label: kindLabel(m.class) }];
  const less = m?.mix?.lessWater;
  return [
    given('Name', m?.name),
    {
      ...given('Kind', m?.class),
      options: [...MATERIAL_KINDS, ...own].map(({ id, label }) => ({ value: id, label })),
    },
    ...WHOLE.map(([key, label]) => given(label, showNumber(m?.[key]))),
    { ...given(POWDER, showNumber(m?.mix?.powderG)), hint: 'empty when not mixed with water' },
    given(WATER, showNumber(m?.mix?.waterMl)),
    given(LESS, less === undefined ? '' : showNumber(Math.round(less * 10_000) / 100)),
    given(WARM, showNumber(m?.waterC)),
    given(LOT, m?.lot),
    { ...given(DAY, m?.expires), hint: 'as 2027-03-31' },
  ];
}

function linesOf(m: Material): readonly string[] {
  const less = m.mix?.lessWater === undefined ? '' : `, ${Math.round(m.mix.lessWater * 100)} % of the water left out`;
  return [
    kindLabel(m.class),
    `mix ${m.mixS} s, work ${m.workingS} s, out from ${m.removeS} s, pour ${m.pourFromMin} to ${m.pourWithinMin} min`,
    ...(m.mix === undefined ? [] : [`${m.mix.powderG} g powder to ${m.mix.waterMl} ml water${less}`]),
    lotText(m) === '' ? 'no lot entered' : lotText(m),
  ];
}

export function Materials({ practice, onChange }: ListProps) {
  const ids = practice.materials.map((m) => m.id);
  return (
    <EntryList<Material>
      id="materials"
      title="Materials"
      one="material"
      entries={practice.materials}
      nameOf={(m) => m.name}
      markOf={(m) => (m.generic ? GENERIC : '')}
      linesOf={linesOf}
      fieldsOf={fieldsOf}
      read={(written, before) => readMaterial(written, before, ids)}
      onChange={(materials) => onChange({ materials })}
    />
  );
}
