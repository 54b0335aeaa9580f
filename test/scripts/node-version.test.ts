import { expect, it } from 'vitest';
import { nodeTrouble } from '../../scripts/lib/node-version.mjs';

it.each(['20.19.0', '20.20.2', '22.12.0', '22.30.1', '23.0.0', '24.1.0', '100.0.0'])('Node %s will do', (version) => {
  expect(nodeTrouble(version)).toBe('');
});

it.each(['12.0.0', '18.20.4', '20.18.9', '21.7.3', '22.11.0', 'nonsense', ''])(
  'Node %s is told what is wanted',
  (version) => {
    expect(nodeTrouble(version)).toContain('Node 20.19 or newer');
    expect(nodeTrouble(version)).toContain(`this is Node ${version}`);
  },
);
