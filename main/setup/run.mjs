// node main/setup/run.mjs FILE.ts [arguments]: bundles one TypeScript file with what it imports and runs it in Node,
// with the root of the repository as working folder. For generators, calibration, evaluation and benchmarks.

import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { argv, env, execPath } from 'node:process';
import { REQUIRE_IN_MODULE } from './buildParts.mjs';
import { CACHE, isStarted, ROOT } from './places.mjs';
import { runCommand, SetupProblem } from './problem.mjs';

/**
 * Bundles `file` and runs it.
 * @param {string} file from the root
 * @param {readonly string[]} given arguments
 * @param {{ nodeFlags?: readonly string[], under?: (program: string, given: readonly string[]) => { program: string, given: string[] } }} [how]
 *   `under` wraps the command, as onHiddenScreen does
 * @returns {Promise<number>} its exit status
 */
export async function runTypeScript(file, given, { nodeFlags = [], under } = {}) {
  const entry = resolve(ROOT, file);
  if (!existsSync(entry)) {
    throw new SetupProblem({
      what: `There is no file ${file}.`,
      where: ROOT,
      doNext: 'give the path of a TypeScript file, counted from the root of the repository',
    });
  }
  // As deep below the root as main/setup, so that what is bundled from there finds the root too.
  const short = createHash('sha256').update(entry).digest('hex').slice(0, 8);
  const bundle = join(CACHE, 'run', `${basename(file).replace(/\.tsx?$/, '')}-${short}.mjs`);
  const esbuild = await import('esbuild');
  const result = await esbuild
    .build({
      entryPoints: [entry],
      outfile: bundle,
      bundle: true,
      platform: 'node',
      target: 'node20',
      format: 'esm',
      external: ['electron', 'playwright', 'esbuild'],
      banner: { js: REQUIRE_IN_MODULE },
      sourcemap: 'inline',
      logLevel: 'silent',
      absWorkingDir: ROOT,
    })
    .catch((error) => {
      const first = error.errors?.[0];
      throw new SetupProblem({
        what: `${file} could not be bundled: ${first?.text ?? error.message}.`,
        where: first?.location ? `${first.location.file}, line ${first.location.line}` : file,
        doNext: 'mend that line and run the command again',
      });
    });
  for (const warning of result.warnings) process.stderr.write(`${warning.text}\n`);
  const script = ['--enable-source-maps', ...nodeFlags, bundle, ...given];
  const command = under?.(execPath, script) ?? { program: execPath, given: script };
  const child = spawn(command.program, command.given, { cwd: ROOT, stdio: 'inherit', env });
  return new Promise((done, failed) => {
    child.on('error', failed);
    child.on('exit', (status, signal) => done(status ?? (signal === 'SIGINT' ? 130 : 1)));
  });
}

async function command() {
  const [file, ...given] = argv.slice(2);
  if (file === undefined) {
    throw new SetupProblem({
      what: 'No file was named.',
      where: 'node main/setup/run.mjs',
      doNext: 'name a TypeScript file: node main/setup/run.mjs main/setup/writeSampleDrives.ts',
    });
  }
  const { prepare } = await import('./prepare.mjs');
  await prepare();
  return runTypeScript(file, given);
}

if (isStarted(import.meta.url)) await runCommand(command);
