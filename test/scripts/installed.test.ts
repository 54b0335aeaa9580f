import { expect, it } from 'vitest';
import { installTrouble } from '../../scripts/lib/installed.mjs';

const wanted = {
  packages: {
    '': { version: '0.1.0' },
    'node_modules/a': { version: '1.0.0' },
    'node_modules/a/node_modules/b': { version: '2.0.0' },
    'node_modules/only-elsewhere': { version: '3.0.0', optional: true },
  },
};
const present = {
  packages: { 'node_modules/a': { version: '1.0.0' }, 'node_modules/a/node_modules/b': { version: '2.0.0' } },
};

it('nothing is installed when everything the lock file names is there', () => {
  expect(installTrouble(wanted, present)).toBe('');
});

it('a fresh clone, a missing package and another version are told apart', () => {
  expect(installTrouble(wanted, undefined)).toBe('The packages are not installed yet.');
  expect(installTrouble(wanted, { packages: { 'node_modules/a': { version: '1.0.0' } } })).toBe(
    'The package b is missing.',
  );
  const older = { packages: { ...present.packages, 'node_modules/a': { version: '0.9.0' } } };
  expect(installTrouble(wanted, older)).toBe('The package a is 0.9.0, but 1.0.0 is wanted.');
});
