import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { outsideChecks, outsideChecksFile } from '../../scripts/outside-checks.ts';
import { sources } from '../../src/domain/measure/sources.ts';
import { tables } from './tables.ts';

describe('docs/outside-checks.md', () => {
  it('is what the tables say now; if not: npx tsx scripts/outside-checks.ts', () => {
    expect(readFileSync(outsideChecksFile, 'utf8')).toBe(outsideChecks());
  });

  it('names every check and cites every source it names', () => {
    const text = outsideChecks();
    for (const row of tables.flatMap((table) => table.rows)) {
      expect(text).toContain(row.what.replaceAll('|', '\\|'));
      expect(text).toContain(sources[row.source].citation.replaceAll('|', '\\|'));
    }
  });
});
