// The command as a process: what is left of the promises when streams, signals and faults of the program itself meet it.

import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { REQUIRE_IN_MODULE } from '../../../../main/setup/buildParts.mjs';

const ROOT = join(import.meta.dirname, '../../../..');
const folder = mkdtempSync(join(tmpdir(), 'tailtrace-process-'));
const command = join(folder, 'score.mjs');
const broken = join(folder, 'broken.mjs');

async function bundle(outfile: string, fault: string): Promise<void> {
  await build({
    entryPoints: [join(ROOT, 'main/command/score.ts')],
    bundle: true,
    platform: 'node',
    target: 'node20',
    format: 'esm',
    outfile,
    banner: { js: `${REQUIRE_IN_MODULE}${fault}` },
    logLevel: 'silent',
  });
}

beforeAll(async () => {
  await bundle(command, '');
  await bundle(broken, "JSON.stringify = () => { throw new TypeError('planted'); };");
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const run = (script: string, words: string[], more: object = {}) =>
  spawnSync(process.execPath, [script, ...words], { cwd: ROOT, encoding: 'utf8', timeout: 60_000, ...more });

describe('the headless command as a process', () => {
  test('0, 2 and 3 are its exit status', () => {
    expect(run(command, ['assets/drives/van-before.csv', '--json']).status).toBe(0);
    expect(run(command, ['--jason']).status).toBe(2);
    expect(run(command, ['assets/drives']).status).toBe(3);
  });

  test('standard output holds JSON Lines and nothing else, also through npm’s folder change', () => {
    const env = { ...process.env, npm_lifecycle_event: 'score', INIT_CWD: join(ROOT, 'assets') };
    const said = run(command, ['drives/van-before.csv', 'drives/van-after.csv', '--json'], { env });
    expect(said.stderr).toBe('');
    expect(
      said.stdout
        .trimEnd()
        .split('\n')
        .map((line) => JSON.parse(line).capture.file),
    ).toEqual(['van-before.csv', 'van-after.csv']);
  });

  test('it ends with its status where nobody reads its errors', async () => {
    const child = spawn(process.execPath, [command, 'nowhere.csv', '--json'], { cwd: ROOT, timeout: 60_000 });
    child.stderr.destroy();
    const [status] = await once(child, 'exit');
    expect(status).toBe(3);
  });

  test('a reader that stops early is no fault', () => {
    const words = Array.from({ length: 6 }, () => 'assets/drives/van-before.csv').join(' ');
    const said = spawnSync('sh', ['-c', `"${process.execPath}" "${command}" ${words} --json | head -c 10; exit 0`], {
      cwd: ROOT,
      encoding: 'utf8',
    });
    expect(said.stderr).toBe('');
    expect(said.stdout).toHaveLength(10);
  });

  test('a fault in the program itself is one sentence and status 3, never a stack', () => {
    const said = run(broken, ['assets/drives/van-before.csv', '--json']);
    expect(said.status).toBe(3);
    expect(said.stdout).toBe('');
    expect(said.stderr).toMatch(/^A fault in Tailtrace itself [^\n]+\n$/);
    expect(said.stderr).not.toMatch(/TypeError|\bat /);
    expect(
      run(broken, ['assets/drives/van-before.csv', '--json'], { env: { ...process.env, TAILTRACE_TRACE: '1' } }).stderr,
    ).toContain('planted');
  });

  test('standard input', () => {
    const said = run(command, ['-', '--describe', '--json'], { input: 'time (s),rpm\n0,800\n1,801\n2,799\n' });
    expect(JSON.parse(said.stdout).capture).toMatchObject({ file: 'standard input', rows: 3 });
    const empty = run(command, ['-'], { input: '' });
    expect([empty.status, empty.stdout]).toEqual([3, '']);
    expect(empty.stderr).toMatch(/^standard input: This file is empty\./);
  });
});
