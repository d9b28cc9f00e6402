// npm test: prepares, checks, builds, and runs every test; the real program on a hidden screen where there is none.
// npm test -- PATTERN runs only the test files whose path holds PATTERN, or the tests whose names do.
// The last line counts: each check and each test is one.

import { existsSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { build } from './build.mjs';
import { CHECKS, runCheck } from './checks.mjs';
import { inRoot } from './places.mjs';
import { prepareWindow } from './prepare.mjs';
import { runCommand, SetupProblem } from './problem.mjs';
import { closingLine, runTests } from './vitestRun.mjs';

const WITHOUT_PROGRAM = ['unit', 'fault'];
const EVERY_PROJECT = [...WITHOUT_PROGRAM, 'endToEnd'];

await runCommand(async () => {
  const [pattern, ...more] = process.argv.slice(2);
  await prepareWindow({ hiddenScreen: true, tests: true });
  const counts = { passed: 0, failed: 0, skipped: 0 };
  const count = (/** @type {boolean} */ passed) => {
    counts[passed ? 'passed' : 'failed'] += 1;
  };
  if (pattern === undefined) for (const check of CHECKS) count(await runCheck(check));
  const built = await tryBuild();
  if (pattern === undefined || !built) count(built);
  const tests = await runTests({
    projects: built ? EVERY_PROJECT : WITHOUT_PROGRAM,
    given: pattern === undefined ? [] : [...(await chosen(pattern)), ...more],
    hiddenScreen: true,
  });
  if (pattern !== undefined && tests.passed + tests.failed === 0) {
    process.stdout.write(`No test file and no test has "${pattern}" in its name.\n`);
    tests.failed = 1;
  }
  if (tests.status !== 0 && tests.failed === 0) tests.failed = 1; // a fault outside any test, named above
  counts.passed += tests.passed;
  counts.failed += tests.failed;
  if (pattern === undefined) counts.skipped += tests.skipped; // else those that were not asked for
  process.stdout.write(`\n${closingLine(counts)}\n`);
  return counts.failed === 0 ? 0 : 1;
});

/** Builds; a failure is told and counted, and the tests that need no program still run. */
async function tryBuild() {
  try {
    const { missing } = await build();
    if (missing.length > 0) process.stdout.write(`build: these parts are missing: ${missing.join(', ')}\n`);
    return missing.length === 0;
  } catch (error) {
    if (!(error instanceof SetupProblem)) throw error;
    const { what, where, doNext } = error.facts;
    process.stdout.write(`build: ${what}\n  where: ${where}\n  what to do: ${doNext}\n`);
    return false;
  }
}

/**
 * The runner's arguments for a pattern: part of a test file's path, else part of a test's name.
 * @param {string} pattern
 */
async function chosen(pattern) {
  if (pattern.startsWith('-') || existsSync(inRoot(pattern))) return [pattern];
  const entries = await readdir(inRoot('test'), { recursive: true });
  const isPath = entries.some((entry) => /\.test\.tsx?$/.test(entry) && `test/${entry}`.includes(pattern));
  return isPath ? [pattern] : ['--testNamePattern', pattern];
}
