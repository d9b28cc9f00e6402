// PDF needs a browser engine, and the headless command has none: the shell prints, where its runtime is installed and
// the program is built. Both are looked for beside this bundle, as `npm run build` lays them out.

import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { z } from 'zod';
import type { Outcome, Problem } from '../../core/reading/problem.ts';

/** The root of the repository, seen from dist/main/score.mjs. */
const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const LIMIT_MS = 60_000;

/** What is asked of the setup: the runtime that is here, and how to start it without a screen. */
const setupSchema = z.object({
  presentRuntime: z.custom<() => unknown>((value) => typeof value === 'function'),
  onHiddenScreen: z.custom<(program: string, given: string[]) => unknown>((value) => typeof value === 'function'),
  electronArguments: z.custom<(given: string[]) => unknown>((value) => typeof value === 'function'),
});
const runtimeSchema = z.object({ executable: z.string() });
const startSchema = z.object({ program: z.string(), given: z.array(z.string()) });

/** Prints the HTML page `from` to the PDF file `to`. `name` is the PDF's name for people. */
export async function printPdf(from: string, to: string, name: string): Promise<Outcome<null>> {
  const start = await shellStart([`--print-sheet=${from}`, `--print-to=${to}`]);
  if (start === null) return { ok: false, problem: noShell(name) };
  const printed = (await runsWell(start.program, start.given)) && existsSync(to);
  return printed ? { ok: true, value: null } : { ok: false, problem: notPrinted(name) };
}

/** How the shell is started with these arguments, or null where runtime or build are not here. */
async function shellStart(given: string[]): Promise<z.infer<typeof startSchema> | null> {
  if (!existsSync(join(ROOT, 'dist', 'main', 'index.cjs'))) return null;
  try {
    const [runtimes, launches] = await Promise.all(['runtime.mjs', 'launch.mjs'].map(setupModule));
    const setup = setupSchema.parse({ ...Object(runtimes), ...Object(launches) });
    const { executable } = runtimeSchema.parse(setup.presentRuntime());
    const words = z.array(z.string()).parse(setup.electronArguments(given));
    return startSchema.parse(setup.onHiddenScreen(executable, words));
  } catch {
    return null;
  }
}

function setupModule(file: string): Promise<unknown> {
  return import(pathToFileURL(join(ROOT, 'main', 'setup', file)).href);
}

/** Runs to its end. What has not ended in time is stopped with all that it started. */
function runsWell(program: string, given: readonly string[]): Promise<boolean> {
  return new Promise((done) => {
    const child = spawn(program, given, { stdio: 'ignore', detached: process.platform !== 'win32' });
    const late = setTimeout(() => stopAll(child), LIMIT_MS);
    const end = (well: boolean): void => {
      clearTimeout(late);
      done(well);
    };
    child.on('error', () => end(false));
    child.on('exit', (status) => end(status === 0));
  });
}

function stopAll(child: ChildProcess): void {
  if (child.pid === undefined || process.platform === 'win32') child.kill();
  else process.kill(-child.pid); // its own group: the hidden screen and the runtime under it
}

const noShell = (name: string): Problem => ({
  id: 'noShell',
  what: 'A PDF needs Electron, and it or the built program is not here.',
  where: name,
  doNext: 'Run "npm run build" and "npm start" once, or write the sheet as .html and print that.',
});

const notPrinted = (name: string): Problem => ({
  id: 'notPrinted',
  what: 'The program did not print the PDF.',
  where: name,
  doNext: 'Write the sheet as .html and print that.',
});
