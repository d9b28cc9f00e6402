// The walls that the compiler and the linter hold. Forbidden code is planted in a copy of the house that has its real
// configurations and little else; each planted file must be refused, and the harmless file beside it must not. Without
// this a wall can fall silently: the types of one dependency let Node into all of core until they were sent elsewhere.

import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { PROMISE_RULES, promiseLintArguments } from '../../main/setup/checks.mjs';
import { ROOT } from './sourceTree.ts';

/** Path, forbidden text, and what the compiler must say about it. */
const PLANTED: readonly (readonly [string, string, RegExp])[] = [
  ['core/usesProcess.ts', 'export const a = process.cwd();', /'process'/],
  ['core/usesBuffer.ts', 'export const a = Buffer.alloc(1);', /'Buffer'/],
  ['core/usesDocument.ts', 'export const a = document.title;', /'document'/],
  ['core/usesTimer.ts', 'setTimeout(() => {}, 1);', /'setTimeout'/],
  ['core/usesCrypto.ts', 'export const a = crypto.randomUUID();', /'crypto'/],
  ['core/usesConsole.ts', "console.log('x');", /'console'/],
  ['core/readsFiles.ts', "import { readFileSync } from 'node:fs';\nexport const a = readFileSync;", /'node:fs'/],
  ['core/readsFilesShort.ts', "import { readFileSync } from 'fs';\nexport const a = readFileSync;", /'fs'/],
  ['core/usesNewer.ts', 'export const a = [2, 1].toSorted();', /'toSorted'/],
  ['core/readsMain.ts', "export { shell } from '../main/reached1.ts';", /TS6059|TS6307/],
  ['core/readsMainAll.ts', "export * from '../main/reached2.ts';", /TS6059|TS6307/],
  [
    'core/readsMainType.ts',
    "import type { Shell } from '../main/reached3.ts';\nexport type A = Shell;",
    /TS6059|TS6307/,
  ],
  ['core/readsMainLate.ts', "export const a = () => import('../main/reached4.ts');", /TS6059|TS6307/],
  ['core/readsPage.ts', "export { page } from '../renderer/reached5.ts';", /TS6059|TS6307/],
  ['renderer/readsMain.ts', "export { shell } from '../main/reached6.ts';", /TS6059|TS6307/],
  [
    'renderer/readsMainType.ts',
    "import type { Shell } from '../main/reached7.ts';\nexport type A = Shell;",
    /TS6059|TS6307/,
  ],
  ['renderer/usesProcess.ts', 'export const a = process.cwd();', /'process'/],
  ['renderer/readsFiles.ts', "import { readFileSync } from 'node:fs';\nexport const a = readFileSync;", /'node:fs'/],
  ['main/readsPage.ts', "export { page } from '../renderer/reached8.ts';", /TS6059|TS6307/],
  ['main/usesDocument.ts', 'export const a = document.title;', /'document'/],
];

/** A file behind the wall for each that reaches over it: the compiler names only the first who reaches for a file. */
const BEHIND = PLANTED.flatMap(([, text]) => /\.\.\/((?:main|renderer)\/reached\d+\.ts)/.exec(text)?.[1] ?? []);

/** Allowed code, which must compile, and which opens the trap: papaparse's types begin with a reference to Node's. */
const HARMLESS: readonly (readonly [string, string])[] = [
  ['core/harmless.ts', "import Papa from 'papaparse';\nexport const rows = Papa.parse('a,b').data.length;"],
  [
    'main/harmless.ts',
    "import { rows } from '../core/harmless.ts';\nexport interface Shell { cwd: string }\nexport const shell: Shell = { cwd: process.cwd() + rows };",
  ],
  ['renderer/harmless.ts', "import { rows } from '../core/harmless.ts';\nexport const page = document.title + rows;"],
];

let house = '';
let compiler = '';

function plant(path: string, text: string): void {
  mkdirSync(dirname(join(house, path)), { recursive: true });
  writeFileSync(join(house, path), text);
}

function copyConfigurations(): void {
  const configurations = ['tsconfig.base.json', 'core/tsconfig.json', 'main/tsconfig.json', 'renderer/tsconfig.json'];
  for (const path of [...configurations, 'core/noNodeTypes', 'main/setup/lint']) {
    mkdirSync(dirname(join(house, path)), { recursive: true });
    cpSync(join(ROOT, path), join(house, path), { recursive: true });
  }
  const biome = readFileSync(join(ROOT, 'biome.json'), 'utf8').replace(
    '"vcs": { "enabled": true',
    '"vcs": { "enabled": false',
  );
  writeFileSync(join(house, 'biome.json'), biome);
  symlinkSync(join(ROOT, 'node_modules'), join(house, 'node_modules'), 'junction');
}

/** Runs one of the installed tools in the house and gives what it printed. */
function tool(script: readonly string[], given: readonly string[]): string {
  const place = join(ROOT, 'node_modules', ...script);
  const { stdout, stderr } = spawnSync(process.execPath, [place, ...given], { cwd: house, encoding: 'utf8' });
  return stdout + stderr;
}

beforeAll(() => {
  house = mkdtempSync(join(tmpdir(), 'tailtrace-walls-'));
  copyConfigurations();
  for (const [path, text] of [...PLANTED, ...HARMLESS]) plant(path, text);
  for (const path of BEHIND)
    plant(path, 'export const shell = 1;\nexport const page = 1;\nexport type Shell = number;');
  compiler = tool(['typescript', 'bin', 'tsc'], ['-b', '--pretty', 'false', 'core', 'main', 'renderer']);
});

afterAll(() => rmSync(house, { recursive: true, force: true }));

/** What the compiler said about one file, also where the fault is that it was reached from another project. */
const said = (path: string): string =>
  compiler
    .split('\n')
    .filter((line) => line.startsWith(`${path}(`))
    .join('\n');

describe('the compiler', () => {
  test.each(PLANTED)('refuses %s', (path, _text, words) => {
    expect(said(path)).toMatch(words);
  });

  test.each(HARMLESS)('lets %s pass', (path) => {
    expect(said(path)).toBe('');
  });

  test('loads none of the types of Node into core, though a dependency asks for them', () => {
    const files = tool(['typescript', 'bin', 'tsc'], ['-p', 'core', '--listFilesOnly']);
    expect(files).toContain('papaparse');
    expect(files).not.toContain('@types/node');
  });
});

/** What the linter must say, path, forbidden text. */
const NO_CLOCK = 'Core has no clock and no dice';
const IN_CORE = 'core/signal/planted.ts';
const IN_WINDOW = 'renderer/panes/planted.ts';
const FOR_THE_LINTER: readonly (readonly [string, string, string])[] = [
  ['noRestrictedImports', IN_CORE, "import { app } from 'electron';\nexport const a = app;"],
  ['noRestrictedImports', IN_CORE, "export { a } from '../../main/x.ts';"],
  ['noNodejsModules', IN_CORE, "import { readFileSync } from 'node:fs';\nexport const a = readFileSync;"],
  ['noRestrictedGlobals', IN_CORE, 'export const a = process.cwd();'],
  ['noRestrictedGlobals', IN_CORE, 'export const a = document.title;'],
  [NO_CLOCK, IN_CORE, 'export const a = Date.now();'],
  [NO_CLOCK, IN_CORE, 'export const a = new Date();'],
  [NO_CLOCK, IN_CORE, 'export const a = Math.random();'],
  ['noExcessiveLinesPerFile', IN_CORE, 'export const a = 1;\n'.repeat(301)],
  ['noRestrictedImports', IN_WINDOW, "import { ipcRenderer } from 'electron';\nexport const a = ipcRenderer;"],
  ['noRestrictedImports', IN_WINDOW, "export { a } from '../../main/x.ts';"],
  ['noRestrictedImports', 'main/window/planted.ts', "export { a } from '../../renderer/x.ts';"],
  ['noSkippedTests', 'test/unit/planted.test.ts', "import { test } from 'vitest';\ntest.skip('x', () => {});"],
];

describe('the linter', () => {
  test.each(FOR_THE_LINTER)('refuses %s in %s', (words, path, text) => {
    plant(path, text);
    expect(tool(['@biomejs', 'biome', 'bin', 'biome'], ['lint', '--max-diagnostics=none', path])).toContain(words);
  });

  test('refuses two files that import each other', () => {
    plant('core/units/egg.ts', "import { hen } from './hen.ts';\nexport const egg = () => hen;");
    plant('core/units/hen.ts', "import { egg } from './egg.ts';\nexport const hen = () => egg;");
    expect(tool(['@biomejs', 'biome', 'bin', 'biome'], ['lint', 'core/units'])).toContain('noImportCycles');
  });

  test('the rules that need types refuse a promise nobody waits for, a bad condition and a switch that misses a case', () => {
    plant(
      'main/forgotten.ts',
      [
        "import { writeFile } from 'node:fs/promises';",
        "export function save(): void { writeFile('x', 'y'); }",
        "export function ask(): boolean { return writeFile('x', 'y') ? true : false; }",
        "export function words(kind: 'hold' | 'idle'): string { switch (kind) { case 'hold': return 'held'; } return ''; }",
        'export async function late(): Promise<number> { return await 3; }',
      ].join('\n'),
    );
    const said = tool(['oxlint', 'bin', 'oxlint'], promiseLintArguments(['main']));
    expect(PROMISE_RULES.filter((rule) => !said.includes(rule))).toEqual([]);
  });
});
