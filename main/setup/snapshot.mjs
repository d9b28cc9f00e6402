// A picture of the program's window, taken by the program itself once it has settled. Used by npm start and by the test of
// the packed program.

import { spawn } from 'node:child_process';
import { mkdir, mkdtemp, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { lastLines } from './child.mjs';
import { onHiddenScreen, personsFolder } from './launch.mjs';
import { SetupProblem } from './problem.mjs';

const LIMIT_MS = 120_000;

/**
 * @param {string} executable
 * @param {string} picture absolute path
 * @param {string} size WxH
 * @param {readonly string[]} given arguments of the executable
 * @returns {Promise<string>} where the picture is
 */
export async function takeSnapshot(executable, picture, size, given) {
  const dataFolder = await mkdtemp(join(tmpdir(), 'tailtrace-snapshot-'));
  try {
    await mkdir(dirname(picture), { recursive: true });
    await rm(picture, { force: true });
    const wanted = [...given, `--snapshot=${picture}`, `--snapshot-size=${size}`];
    const command = onHiddenScreen(executable, wanted, size);
    const { status, said, tooLong } = await runGroup(command, { ...process.env, TAILTRACE_DATA_DIR: dataFolder });
    const bytes = (await stat(picture).catch(() => null))?.size ?? 0;
    if (status === 0 && bytes > 0) return picture;
    throw new SetupProblem({
      what: tooLong
        ? `The window did not settle within ${LIMIT_MS / 1000} s, so no picture was taken.`
        : `No picture was taken: ${lastLines(withoutNoise(said))}.`,
      where: picture,
      doNext: 'start the program with "npm start" on a screen and see what its window says',
    });
  } finally {
    await rm(dataFolder, { recursive: true, force: true });
  }
}

/** What a desktop-less machine makes Chromium complain about, which has nothing to do with the program. */
const NOISE = /bus\.cc|dbus|gpu|vaapi|gl_|viz_|vulkan|--no-sandbox is|DevTools|xkbcomp|object_proxy|MESA|libEGL/i;

/** @param {string} said */
const withoutNoise = (said) =>
  said
    .split('\n')
    .filter((line) => !NOISE.test(line))
    .join('\n');

/**
 * Runs a command in a process group of its own, so that all of it ends when its time is up.
 * @param {{ program: string, given: string[] }} command
 * @param {NodeJS.ProcessEnv} env
 * @returns {Promise<{ status: number | null, said: string, tooLong: boolean }>}
 */
function runGroup({ program, given }, env) {
  return new Promise((done, failed) => {
    const own = process.platform !== 'win32';
    const child = spawn(program, given, {
      env,
      cwd: personsFolder(),
      detached: own,
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let said = '';
    let tooLong = false;
    const end = () => {
      if (child.pid === undefined) return;
      if (own) process.kill(-child.pid, 'SIGKILL');
      else child.kill();
    };
    const timer = setTimeout(() => {
      tooLong = true;
      end();
    }, LIMIT_MS);
    process.once('SIGINT', end);
    for (const stream of [child.stdout, child.stderr]) {
      stream.on('data', (bytes) => {
        said += bytes;
      });
    }
    child.on('error', failed);
    child.on('close', (status) => {
      clearTimeout(timer);
      process.off('SIGINT', end);
      done({ status, said, tooLong });
    });
  });
}
