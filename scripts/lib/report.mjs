/** Reads what the test runner reports, and counts honestly. */
import { existsSync, readFileSync } from 'node:fs';

/**
 * @typedef {object} Count
 * @property {number} passed
 * @property {number} failed tests that failed, files that could not be loaded, and errors outside any test
 * @property {number} skipped
 */

/** @typedef {{ status: string, assertionResults: { status: string }[] }} FileReport */
/** @typedef {{ success: boolean, testResults: FileReport[] }} Report */

/**
 * A file that does not load has no tests to fail, and an error outside every test fails none: each counts as one failure.
 * @param {Report} report
 * @returns {Count}
 */
export function countTests(report) {
  const tests = report.testResults.flatMap((file) => file.assertionResults.map((test) => test.status));
  const passed = tests.filter((status) => status === 'passed').length;
  const brokenTests = tests.filter((status) => status === 'failed').length;
  const brokenFiles = report.testResults.filter(
    (file) => file.status === 'failed' && !file.assertionResults.some((test) => test.status === 'failed'),
  ).length;
  const failed = brokenTests + brokenFiles;
  return {
    passed,
    failed: failed === 0 && !report.success ? 1 : failed,
    skipped: tests.length - passed - brokenTests,
  };
}

/**
 * @param {string} path
 * @returns {Count | undefined} undefined when there is no report, or one that cannot be read
 */
export function readCount(path) {
  if (!existsSync(path)) return undefined;
  try {
    return countTests(JSON.parse(readFileSync(path, 'utf8')));
  } catch {
    return undefined;
  }
}
