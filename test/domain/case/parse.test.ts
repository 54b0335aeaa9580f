import { describe, expect, it } from 'vitest';
import { parseFact, parseFacts } from '../../../src/domain/case/parse.ts';
import { opening, reading, stamp } from '../../helpers/facts.ts';

const good = stamp([opening, reading(6250)]);

describe('facts at the edge', () => {
  it('takes back what the app wrote, unchanged', () => {
    const parsed = parseFacts(JSON.parse(JSON.stringify(good)) as unknown[]);
    expect(parsed).toEqual({ ok: true, facts: good });
  });

  it.each([
    ['a string for a value', { value: '6250' }, 'body.value'],
    ['a fraction of a hundredth', { value: 6250.5 }, 'body.value'],
    ['an unknown unit', { unit: 'inch' }, 'body.unit'],
    ['an extra field', { shade: 'x' }, 'body.shade'],
  ])('refuses %s and names the place', (_name, change, path) => {
    const raw = { ...good[2]!, body: { ...good[2]!.body, ...change } };
    expect(parseFact(raw)).toMatchObject({ ok: false, reason: 'malformed', path });
  });

  it.each([[null], [undefined], [5], ['x'], [[]], [{}], [{ v: 1 }]])('refuses %j without throwing', (raw) => {
    expect(parseFact(raw)).toMatchObject({ ok: false, reason: 'malformed' });
  });

  it('refuses what a newer version wrote, and says so', () => {
    expect(parseFact({ ...good[2]!, v: 2 })).toMatchObject({ ok: false, reason: 'newerFormat' });
  });

  it('hands back the good prefix before a gap', () => {
    const parsed = parseFacts([good[0], good[2]]);
    expect(parsed).toMatchObject({ ok: false, reason: 'gap', at: 2 });
    expect(!parsed.ok && parsed.good).toHaveLength(1);
  });
});
