// How the program is started from its source: which arguments Electron gets, and on which screen.

import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { cwd, env } from 'node:process';
import { ROOT } from './places.mjs';

/**
 * Electron's arguments: the folder of the program first, then its own arguments. Chromium refuses to run as root with its
 * sandbox; only there it is switched off, as in a container. The shipped program has no such switch.
 * @param {readonly string[]} given
 */
export function electronArguments(given) {
  return [ROOT, ...given, ...(isRoot() ? ['--no-sandbox'] : [])];
}

export const isRoot = () => process.getuid?.() === 0;

/** Whether there is a screen to show a window on. */
export const hasScreen = () => process.platform !== 'linux' || Boolean(env.DISPLAY) || Boolean(env.WAYLAND_DISPLAY);

/**
 * The command that runs `program` on a screen nobody sees, where there is such a thing; else the program itself.
 * @param {string} program
 * @param {readonly string[]} given
 * @param {string} [size] WxH that must fit on it
 * @returns {{ program: string, given: string[] }}
 */
export function onHiddenScreen(program, given, size = '0x0') {
  if (process.platform !== 'linux' || !existsSync('/usr/bin/xvfb-run')) return { program, given: [...given] };
  const [width = 0, height = 0] = size.split('x').map(Number);
  const pixels = `${Math.max(1920, width)}x${Math.max(1200, height)}x24`;
  const screen = ['--auto-servernum', '--server-args', `-screen 0 ${pixels}`];
  return { program: 'xvfb-run', given: [...screen, program, ...given] };
}

/** The folder in which the person typed the command; npm itself changes to the root. */
export function personsFolder() {
  const startedByNpm = env.npm_lifecycle_event === 'start' || env.npm_lifecycle_event === 'score';
  return startedByNpm && env.INIT_CWD !== undefined ? env.INIT_CWD : cwd();
}

/**
 * Runs the program with this terminal until it ends.
 * @param {string} executable
 * @param {readonly string[]} given
 * @returns {Promise<number>} exit status
 */
export function runShown(executable, given) {
  const child = spawn(executable, given, { cwd: personsFolder(), stdio: 'inherit' });
  process.on('SIGINT', () => {}); // the program hears it too, saves, and ends
  process.on('SIGTERM', () => child.kill('SIGTERM'));
  return new Promise((done, failed) => {
    child.on('error', failed);
    child.on('exit', (status) => done(status ?? 1));
  });
}
