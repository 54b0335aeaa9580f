import { expect, it } from 'vitest';
import { countTests, readCount } from '../../scripts/lib/report.mjs';

const file = (status: string, ...tests: string[]) => ({
  status,
  assertionResults: tests.map((one) => ({ status: one })),
});

it('tests are counted one by one', () => {
  const report = {
    success: false,
    testResults: [file('failed', 'passed', 'failed', 'failed'), file('passed', 'passed', 'skipped', 'todo')],
  };
  expect(countTests(report)).toEqual({ passed: 2, failed: 2, skipped: 2 });
});

it('a file that cannot be loaded has no tests, and still counts as a failure', () => {
  const report = { success: false, testResults: [file('failed'), file('passed', 'passed')] };
  expect(countTests(report)).toEqual({ passed: 1, failed: 1, skipped: 0 });
});

it('an error outside every test counts as a failure', () => {
  expect(countTests({ success: false, testResults: [file('passed', 'passed')] })).toEqual({
    passed: 1,
    failed: 1,
    skipped: 0,
  });
});

it('no tests at all are no success', () => {
  expect(countTests({ success: false, testResults: [] })).toEqual({ passed: 0, failed: 1, skipped: 0 });
});

it('a report that was never written is told from an empty one', () => {
  expect(readCount('/nowhere/at/all.json')).toBeUndefined();
});
