// Other programs, run to their end.

import { spawn } from 'node:child_process';

/**
 * @typedef {object} Ended
 * @property {number | null} status exit status; null where it was ended by a signal or could not be started
 * @property {string} output standard output, and standard error after it; empty where shown as it came
 * @property {boolean} started false where there is no such program
 * @property {boolean} tooLong true where it was ended because its time was up
 */

/**
 * Runs a program without a shell. Never rejects.
 * @param {string} program
 * @param {readonly string[]} given
 * @param {{ cwd?: string, env?: NodeJS.ProcessEnv, shown?: boolean, limitMs?: number }} [options]
 *   `shown` hands it this terminal instead of collecting what it prints
 * @returns {Promise<Ended>}
 */
export function runToEnd(program, given, { cwd, env, shown = false, limitMs } = {}) {
  return new Promise((done) => {
    const child = spawn(program, given, { cwd, env, stdio: shown ? 'inherit' : ['ignore', 'pipe', 'pipe'] });
    let out = '';
    let err = '';
    let tooLong = false;
    const timer =
      limitMs === undefined
        ? undefined
        : setTimeout(() => {
            tooLong = true;
            child.kill('SIGKILL');
          }, limitMs);
    child.stdout?.on('data', (bytes) => {
      out += bytes;
    });
    child.stderr?.on('data', (bytes) => {
      err += bytes;
    });
    child.on('error', () => {
      clearTimeout(timer);
      done({ status: null, output: err, started: false, tooLong });
    });
    child.on('close', (status) => {
      clearTimeout(timer);
      done({ status, output: out + err, started: true, tooLong });
    });
  });
}

/**
 * The last lines a program printed, for a message.
 * @param {string} output
 */
export function lastLines(output, count = 3) {
  const lines = output
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '' && !line.startsWith('at '));
  return lines.slice(-count).join(' / ') || 'it said nothing';
}

/** What npm tells of itself before it tells what happened. */
const NPM_FACTS = /^(code|syscall|errno|path|dest|file|type)\b/;

/**
 * Why npm failed: the first line that says so. Its last lines are always the same, and name a log.
 * @param {string} output
 */
export function npmReason(output) {
  const said = output
    .split('\n')
    .map(
      (line) =>
        /^npm (?:error|ERR!) ?(.*)$/
          .exec(line)?.[1]
          ?.replace(/^network /, '')
          .trim() ?? '',
    )
    .filter((line) => line !== '' && !NPM_FACTS.test(line));
  return said[0] ?? lastLines(output);
}

/**
 * Runs npm, by the very program that runs this command where npm started it.
 * @param {readonly string[]} given
 * @param {{ cwd: string }} options
 */
export function runNpm(given, options) {
  const itself = process.env.npm_execpath;
  return itself?.endsWith('.js')
    ? runToEnd(process.execPath, [itself, ...given], options)
    : runToEnd('npm', given, options);
}
