// The small decisions of the set-up: versions, arguments of the program, the closing line, refusals.

import { mkdtempSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { lastLines, npmReason, runToEnd } from '../../../../main/setup/child.mjs';
import { verifyPackage } from '../../../../main/setup/fallbackRuntime.mjs';
import { electronArguments, isRoot } from '../../../../main/setup/launch.mjs';
import { asList, asText, shippedPackages } from '../../../../main/setup/licences.mjs';
import { refuseFallback } from '../../../../main/setup/pack.mjs';
import { ROOT } from '../../../../main/setup/places.mjs';
import { checkNode, isOlder } from '../../../../main/setup/prepare.mjs';
import { pinnedVersion } from '../../../../main/setup/runtime.mjs';
import { closingLine, countsOf } from '../../../../main/setup/vitestRun.mjs';

describe('versions of Node', () => {
  test.each([
    ['18.19.0', '20.19.0', true],
    ['20.9.0', '20.11.0', true],
    ['20.19.0', '20.19.0', false],
    ['22.0.0', '20.19.0', false],
    ['20.19.1', '20.19', false],
  ])('%s is older than %s: %s', (a, b, older) => {
    expect(isOlder(a, b)).toBe(older);
  });

  test('an old one is refused with both versions in the sentence', () => {
    expect(() => checkNode('18.0.0')).toThrow(/^Node\.js 18\.0\.0 is too old; Tailtrace needs 2\d/);
    expect(() => checkNode(process.versions.node)).not.toThrow();
  });
});

describe('how the program is started', () => {
  test('its folder first, then what was given; the sandbox is off for root alone', () => {
    const given = electronArguments(['a.csv']);
    expect(given.slice(0, 2)).toEqual([ROOT, 'a.csv']);
    expect(given.includes('--no-sandbox')).toBe(isRoot());
  });
});

describe('other programs', () => {
  test('one that is not there, one that fails, one that takes too long', async () => {
    expect(await runToEnd('there-is-no-such-program', [])).toMatchObject({ started: false, status: null });
    const failing = await runToEnd(process.execPath, ['-e', 'console.error("no"); process.exit(3)']);
    expect(failing).toMatchObject({ started: true, status: 3, tooLong: false });
    expect(lastLines(failing.output)).toBe('no');
    const endless = await runToEnd(process.execPath, ['-e', 'setInterval(() => {}, 1000)'], { limitMs: 50 });
    expect(endless).toMatchObject({ tooLong: true, status: null });
  });

  test('of what one said the last lines are told, without the places in its code', () => {
    expect(lastLines('a\n\nTypeError: fetch failed\n    at x (y.js:1:2)\n', 1)).toBe('TypeError: fetch failed');
    expect(lastLines('')).toBe('it said nothing');
  });
});

describe('npm', () => {
  // As npm 10 writes them, shortened.
  test.each([
    [
      'npm error code ENOTFOUND\nnpm error syscall getaddrinfo\nnpm error errno ENOTFOUND\nnpm error network request to https://r.invalid/a failed, reason: getaddrinfo ENOTFOUND r.invalid\nnpm error network This is a problem related to network connectivity.\nnpm error A complete log of this run can be found in: /home/x/.npm/_logs/1.log',
      'request to https://r.invalid/a failed, reason: getaddrinfo ENOTFOUND r.invalid',
    ],
    [
      'npm error code EUSAGE\nnpm error\nnpm error `npm ci` can only install packages when both files are in sync.\nnpm error',
      '`npm ci` can only install packages when both files are in sync.',
    ],
    ['npm ERR! code EINTEGRITY\nnpm ERR! sha512-a integrity checksum failed', 'sha512-a integrity checksum failed'],
    ['Killed', 'Killed'],
  ])('%j is told as its reason, not as the place of a log', (output, reason) => {
    expect(npmReason(output)).toBe(reason);
  });
});

describe('a command', () => {
  test('does its work also when it is named through a link to the clone', async () => {
    const link = join(mkdtempSync(join(tmpdir(), 'tailtrace-link-')), 'a clone');
    symlinkSync(ROOT, link);
    const ended = await runToEnd(process.execPath, [join(link, 'main', 'setup', 'run.mjs')]);
    expect(ended).toMatchObject({ status: 1 });
    expect(ended.output).toContain('No file was named.');
  });

  test.each([
    ['EACCES', 'may not be written'],
    ['ENOSPC', 'does not fit on the disk'],
  ])('says what to do where the system refuses a file: %s', async (code, words) => {
    const script = `
      import { runCommand } from ${JSON.stringify(new URL('main/setup/problem.mjs', `file://${ROOT}/`).href)};
      await runCommand(() => Promise.reject(Object.assign(new Error('x'), { code: '${code}', path: '/clone/.cache' })));
    `;
    const ended = await runToEnd(process.execPath, ['--input-type=module', '-e', script]);
    expect(ended.status).toBe(1);
    expect(ended.output).toContain(words);
    expect(ended.output).toContain('where: /clone/.cache');
    expect(ended.output).not.toMatch(/TAILTRACE_TRACE|at file:/);
  });
});

describe('the closing line', () => {
  const report = { numPassedTests: 7, numFailedTests: 1, numPendingTests: 0, numTodoTests: 0, testResults: [] };

  test('counts, and names skipped ones only where there are some', () => {
    expect(closingLine({ passed: 7, failed: 0, skipped: 0 })).toBe('7 passed, 0 failed');
    expect(closingLine({ passed: 7, failed: 1, skipped: 2 })).toBe('7 passed, 1 failed, 2 skipped');
  });

  test('a file that could not be loaded, and a run without a report, are failures', () => {
    expect(countsOf(report)).toEqual({ passed: 7, failed: 1, skipped: 0 });
    const notLoaded = [{ status: 'failed', assertionResults: [] }];
    expect(countsOf({ ...report, testResults: notLoaded })).toEqual({ passed: 7, failed: 2, skipped: 0 });
    expect(countsOf(null)).toEqual({ passed: 0, failed: 1, skipped: 0 });
  });
});

describe('T-EL-16: what may be packed for release', () => {
  const runtime = { kind: 'current' as const, version: pinnedVersion(), executable: '', folder: 'dist' };

  test('the pinned Electron and no other', () => {
    expect(() => refuseFallback(runtime)).not.toThrow();
    expect(() => refuseFallback({ ...runtime, version: '25.1.1' })).toThrow('never packed for release');
    expect(() => refuseFallback({ ...runtime, kind: 'fallback' })).toThrow('never packed for release');
  });
});

describe('the runtime for closed networks', () => {
  test('a package with other bytes is not unpacked', async () => {
    const place = join(mkdtempSync(join(tmpdir(), 'tailtrace-test-')), 'other.tgz');
    writeFileSync(place, 'not the package that was examined');
    await expect(verifyPackage(place)).rejects.toThrow('its SHA-512 differs. It was not unpacked.');
  });
});

describe('licences of what is shipped', () => {
  test('every package with its text, and no development tool', async () => {
    const packages = await shippedPackages();
    const names = packages.map(({ name }) => name);
    expect(names).toEqual(expect.arrayContaining(['react', 'uplot', 'zod', 'fflate', 'papaparse', 'yauzl', 'pend']));
    expect(names).not.toContain('vitest');
    expect(packages.filter(({ text }) => text.length < 200)).toEqual([]);
    expect(
      packages.filter(({ licence }) => !/^(MIT|ISC|Apache-2\.0|OFL-1\.1|BSD-[23]-Clause|0BSD)$/.test(licence)),
    ).toEqual([]);
    expect(JSON.parse(asList(packages))).toHaveLength(packages.length);
    expect(asText(packages)).toContain('SIL OPEN FONT LICENSE');
  });
});
