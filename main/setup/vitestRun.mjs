// One run of the tests, and how many passed.

import { spawn } from 'node:child_process';
import { readFile, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { hasScreen, onHiddenScreen } from './launch.mjs';
import { CACHE, inRoot, ROOT } from './places.mjs';
import { presentRuntime } from './runtime.mjs';

/**
 * @typedef {{ passed: number, failed: number, skipped: number }} Counts
 */

/** Of this run alone: another may be under way in the same clone. */
const reportPlace = () => join(CACHE, `test-report-${process.pid}.json`);

/**
 * @param {{ projects: readonly string[], given: readonly string[], hiddenScreen: boolean }} wish
 * @returns {Promise<Counts & { status: number }>}
 */
export async function runTests({ projects, given, hiddenScreen }) {
  const script = [
    inRoot('node_modules', 'vitest', 'vitest.mjs'),
    'run',
    ...projects.map((project) => `--project=${project}`),
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${reportPlace()}`,
    ...given,
  ];
  const hide = hiddenScreen && !hasScreen();
  const command = hide ? onHiddenScreen(process.execPath, script) : { program: process.execPath, given: script };
  const status = await new Promise((done, failed) => {
    const child = spawn(command.program, command.given, { cwd: ROOT, env: withRuntime(), stdio: 'inherit' });
    child.on('error', failed);
    child.on('exit', (code) => done(code ?? 1));
  });
  const report = await readReport();
  await rm(reportPlace(), { force: true });
  return { status, ...countsOf(report) };
}

/** Electron's own variable, for whatever asks the electron package where the program is. */
function withRuntime() {
  const runtime = presentRuntime();
  return runtime?.kind === 'fallback' ? { ...process.env, ELECTRON_OVERRIDE_DIST_PATH: runtime.folder } : process.env;
}

async function readReport() {
  try {
    return JSON.parse(await readFile(reportPlace(), 'utf8'));
  } catch {
    return null;
  }
}

/**
 * Numbers of a report of the runner. No report, and a test file that could not be loaded, count as a failure: nothing
 * that did not run may look like a success.
 * @param {{ numPassedTests: number, numFailedTests: number, numPendingTests: number, numTodoTests: number,
 *   testResults: readonly { status: string, assertionResults: readonly unknown[] }[] } | null} report
 * @returns {Counts}
 */
export function countsOf(report) {
  if (report === null) return { passed: 0, failed: 1, skipped: 0 };
  const notLoaded = report.testResults.filter((file) => file.status === 'failed' && file.assertionResults.length === 0);
  return {
    passed: report.numPassedTests,
    failed: report.numFailedTests + notLoaded.length,
    skipped: report.numPendingTests + report.numTodoTests,
  };
}

/**
 * The closing line.
 * @param {Counts} counts
 */
export function closingLine({ passed, failed, skipped }) {
  return `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`;
}
