/** What may be chosen at a clock step, and that asking it brings no visit along. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { defaultPractice } from '../../../src/domain/protocol/practice.ts';
import { onOffer } from '../../../src/domain/protocol/on-offer.ts';
import { stepOf } from '../../../src/domain/protocol/path.ts';
import type { ClockStep } from '../../../src/domain/protocol/types.ts';
import { visit1 } from '../../../src/domain/protocol/visit1.ts';

const ids = (step: Parameters<typeof onOffer>[0]) => onOffer(step, defaultPractice).map(({ id }) => id);
const bath = stepOf(visit1, 'disinfect-upper') as ClockStep;
const record = stepOf(visit1, 'bite-record') as ClockStep;

it('offers only the materials of the step’s classes', () => {
  const classes = onOffer(record, defaultPractice).map((item) => ('class' in item ? item.class : 'none'));
  expect(new Set(classes)).toEqual(new Set(['alginate-stiff', 'silicone-putty']));
});

it('offers a material that is named by its id', () => {
  expect(ids({ ...record, materials: ['polyether', 'alginate-fast'] })).toEqual(['alginate-fast', 'polyether']);
});

it('offers every disinfectant of the practice, or only the named ones', () => {
  expect(ids(bath)).toEqual(defaultPractice.disinfectants.map(({ id }) => id));
  expect(ids({ ...bath, materials: ['iodophor'] })).toEqual(['iodophor']);
});

it('offers all disinfectants where the practice has none of the named: a bath must stay possible', () => {
  expect(ids({ ...bath, materials: ['unheard-of'] })).toEqual(defaultPractice.disinfectants.map(({ id }) => id));
});

it('offers nothing where no clock runs', () => {
  expect(ids(stepOf(visit1, 'marks'))).toEqual([]);
  expect(ids(undefined)).toEqual([]);
});

it('imports no visit: the first visit’s chunk stays free of the later ones', () => {
  const text = readFileSync(new URL('../../../src/domain/protocol/on-offer.ts', import.meta.url), 'utf8');
  expect([...text.matchAll(/from '(.+)'/g)].map((match) => match[1])).toEqual(['./types.ts']);
});
