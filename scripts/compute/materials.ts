import { dentureSoak, disinfectionCheck, labRelease } from '../../src/domain/measure/disinfection.ts';
import { mixPlan, mixRatio, ratioCheck, roomSetting, temperatureCheck } from '../../src/domain/measure/mixing.ts';
import { plannedBack } from '../../src/domain/measure/planned-back.ts';
import { refuse, type Measured } from '../../src/domain/measure/result.ts';
import { changeOverSpan, elastomerCheck, lastingDent } from '../../src/domain/measure/standards.ts';
import { materialPhases, pourState, pourWindow } from '../../src/domain/measure/windows.ts';
import { defaultPractice } from '../../src/domain/protocol/practice.ts';
import type { Material } from '../../src/domain/protocol/types.ts';
import { computation, fields, maybe, number, oneOf, text, type Computation } from './inputs.ts';

const mix = { powderG: number('g'), waterMl: number('ml') };

const mixing: readonly Computation[] = [
  computation('mixRatio', { about: 'powder to water', unit: 'g/ml', takes: mix, run: (i) => mixRatio(i) }),
  computation('ratioCheck', {
    about: 'a mix against the leaflet’s',
    unit: 'g/ml',
    takes: { mix: fields(mix), leaflet: fields(mix) },
    run: (i) => ratioCheck(i.mix, i.leaflet),
  }),
  computation('mixPlan', {
    about: 'powder and water for portions, with less water',
    unit: 'g, ml',
    takes: { leaflet: fields(mix), portions: maybe(number('×')), lessWater: maybe(number('share, 0 to 0.5')) },
    run: (i) => mixPlan(i),
  }),
  computation('temperatureCheck', {
    about: 'water temperature against the leaflet’s',
    unit: '°C, s',
    takes: { waterC: number('°C'), leafletC: number('°C') },
    run: (i) => temperatureCheck(i.waterC, i.leafletC),
  }),
  computation('roomSetting', {
    about: 'setting time by room temperature, one study’s regression',
    unit: 's',
    takes: { kind: oneOf('regular', 'fast'), degrees: number('°C') },
    run: (i) => roomSetting(i.kind, i.degrees),
  }),
];

const leaflet = {
  id: text('material id'),
  mixS: maybe(number('s')),
  workingS: maybe(number('s')),
  removeS: maybe(number('s')),
  pourFromMin: maybe(number('min')),
  pourWithinMin: maybe(number('min')),
};

/** Generic figures of the material named, with those given in their place. */
function withLeaflet<T>(
  { id, ...figures }: { readonly id: string } & Partial<Material>,
  compute: (material: Material) => Measured<T>,
): Measured<T> {
  const { materials } = defaultPractice;
  const material = materials.find((m) => m.id === id);
  if (material !== undefined) return compute({ ...material, ...figures });
  return refuse('unknown', `“${id}” is no material; known: ${materials.map((m) => m.id).join(', ')}.`);
}

const windows: readonly Computation[] = [
  computation('materialPhases', {
    about: 'phases of a material; without figures, of a generic one by its id',
    unit: 's',
    takes: leaflet,
    run: (figures) => withLeaflet(figures, materialPhases),
  }),
  computation('plannedBack', {
    about: 'when to load and to seat, planned back from the working time; without figures, of a generic one by its id',
    unit: 's',
    takes: leaflet,
    run: (figures) => withLeaflet(figures, plannedBack),
  }),
  computation('pourState', {
    about: 'where an impression stands between removal and pouring',
    unit: 'ms',
    takes: { removedAt: number('ms'), now: number('ms'), pourFromMin: number('min'), pourWithinMin: number('min') },
    run: (i) => pourState(i),
  }),
  computation('pourWindow', {
    about: 'pour window of a class of material',
    unit: 'min',
    takes: { materialClass: text('class') },
    run: (i) => pourWindow(i.materialClass),
  }),
  computation('disinfectionCheck', {
    about: 'an exposure against label time and what the material bears',
    unit: 'word',
    takes: {
      materialClass: text('class'),
      agent: oneOf('hypochlorite', 'iodophor', 'glutaraldehyde'),
      minutes: number('min'),
      labelMinutes: number('min'),
    },
    run: (i) => disinfectionCheck(i),
  }),
  computation('labRelease', {
    about: 'may an impression go to the lab, and what is missing',
    unit: 'word',
    takes: {
      agent: maybe(text('agent')),
      concentration: maybe(text('concentration')),
      minutes: maybe(number('min')),
      byWhom: maybe(text('initials')),
    },
    run: (i) => labRelease(i),
  }),
  computation('dentureSoak', {
    about: 'soaking or storing a denture',
    unit: 'word',
    takes: { how: oneOf('hypochlorite', 'water', 'dry'), minutes: number('min') },
    run: (i) => dentureSoak(i.how, i.minutes),
  }),
];

const standards: readonly Computation[] = [
  computation('elastomerCheck', {
    about: 'a material’s test figures against ISO 4823',
    unit: 'word',
    takes: {
      type: oneOf('putty', 'heavy', 'medium', 'light'),
      detailUm: maybe(number('µm')),
      recoveryPercent: maybe(number('%')),
      strainPercent: maybe(number('%')),
      changePercent: maybe(number('%')),
    },
    run: (i) => elastomerCheck(i),
  }),
  computation('changeOverSpan', {
    about: 'a linear change over a span',
    unit: 'mm',
    takes: { percent: number('%'), spanMm: number('mm') },
    run: (i) => changeOverSpan(i.percent, i.spanMm),
  }),
  computation('lastingDent', {
    about: 'what is left of a deformation',
    unit: 'mm',
    takes: { recoveryPercent: number('%'), strainPercent: number('%'), thicknessMm: number('mm') },
    run: (i) => lastingDent(i.recoveryPercent, i.strainPercent, i.thicknessMm),
  }),
];

export const materialComputations: readonly Computation[] = [...mixing, ...windows, ...standards];
