import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { appVersion } from '../../src/app/version.ts';

it('the version written into facts is the version of the package', () => {
  const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as {
    version: string;
  };
  expect(appVersion).toBe(version);
});
