import { expect, it } from 'vitest';
import { checkAll, type Known } from '../../scripts/crash/check.ts';
import type { Fact } from '../../src/domain/case/facts.ts';
import { browserDigest, seal, stableText } from '../../src/storage/chain.ts';
import { facts } from '../storage/samples.ts';

const sealed = (all: readonly Fact[]) => seal(all, '', browserDigest()!);
const known = (acknowledged: number, entries: readonly Fact[] = []) =>
  new Map<string, Known>([['case-a', { acknowledged, entries: entries.map(stableText) }]]);

it('counts what was acknowledged since the last crash, and nothing lost when all is there', async () => {
  const so = await checkAll(known(5, facts(1, 2)), { 'case-a': await sealed(facts(1, 6)) });
  expect(so).toEqual({ acknowledged: 3, lost: 0, clocks: 0, wrong: [] });
});

it('sees an end that is gone, a case that is gone, and a hole', async () => {
  expect(await checkAll(known(5), { 'case-a': await sealed(facts(1, 3)) })).toMatchObject({ lost: 2 });
  expect(await checkAll(known(5), {})).toMatchObject({ lost: 5 });
  const hole = (await sealed(facts(1, 6))).toSpliced(2, 1);
  const so = await checkAll(known(6), { 'case-a': hole });
  expect(so.lost).toBe(4);
  expect(so.wrong).toContainEqual(expect.stringContaining('sound only up to 2 of 5'));
});

it('sees an entry that is not what it was, with a chain that holds', async () => {
  const other = await sealed([...facts(1, 1), { ...facts(2, 2)[0]!, at: 1 }]);
  const so = await checkAll(known(2, facts(1, 2)), { 'case-a': other });
  expect(so.wrong).toEqual([expect.stringContaining('entry 2 is not as it was')]);
});
