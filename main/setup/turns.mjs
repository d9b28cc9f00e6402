// One installation at a time: two commands that begin together in a fresh clone must not install over each other.

import { mkdir, open, readFile, rm, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { CACHE } from './places.mjs';
import { say } from './say.mjs';

/** Longer than any installation takes: a sign that is older was left behind, and its number may be another program's now. */
const LONGEST_MS = 30 * 60 * 1000;
/** Within this time a sign without a number is one that is being written. */
const WRITING_MS = 10_000;

/**
 * Does `work` when no other command of this clone is at such work, and says once that it waits. A sign that a command left
 * behind which was ended is taken away.
 * @template T
 * @param {() => Promise<T>} work
 * @param {{ place?: string, lookEveryMs?: number }} [how]
 * @returns {Promise<T>}
 */
export async function inTurn(work, { place = join(CACHE, 'installing'), lookEveryMs = 500 } = {}) {
  await mkdir(dirname(place), { recursive: true });
  for (let told = false; !(await putSign(place)); ) {
    if (await isLeftBehind(place)) {
      await rm(place, { force: true });
      continue;
    }
    if (!told) say('Another command is installing what this one needs. Waiting for it.');
    told = true;
    await pause(lookEveryMs);
  }
  try {
    return await work();
  } finally {
    await rm(place, { force: true });
  }
}

/** @param {string} place */
async function putSign(place) {
  try {
    const sign = await open(place, 'wx');
    await sign.writeFile(String(process.pid));
    await sign.close();
    return true;
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'EEXIST') return false;
    throw error;
  }
}

/** @param {string} place */
async function isLeftBehind(place) {
  const there = await stat(place).catch(() => null);
  const owner = await readFile(place, 'utf8').catch(() => null);
  if (there === null || owner === null) return false; // taken away meanwhile
  const ageMs = Date.now() - there.mtimeMs;
  if (owner === '') return ageMs > WRITING_MS;
  return ageMs > LONGEST_MS || !isAlive(Number(owner));
}

/** @param {number} pid */
function isAlive(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM'; // somebody else's
  }
}
