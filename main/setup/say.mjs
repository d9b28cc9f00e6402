// What the set-up says while it works: nothing that is quick, one line for what is slow. Goes to standard error, so that
// standard output stays the command's own.

/** @param {string} line */
export const say = (line) => process.stderr.write(`${line}\n`);

const SLOW_MS = 1500;

/**
 * Does something that may be slow; says `line` only when it takes long.
 * @template T
 * @param {string} line
 * @param {() => Promise<T>} work
 * @returns {Promise<T>}
 */
export async function sayWhenSlow(line, work) {
  const timer = setTimeout(() => say(line), SLOW_MS);
  try {
    return await work();
  } finally {
    clearTimeout(timer);
  }
}
