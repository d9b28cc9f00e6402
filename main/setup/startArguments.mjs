// What stands behind `npm start --`.

import { resolve } from 'node:path';
import { SetupProblem } from './problem.mjs';

/**
 * @typedef {object} StartWish
 * @property {string | null} snapshot absolute path of the picture to make, or null to open the window
 * @property {string} size of the picture's window: WxH
 * @property {string[]} given everything else, for the program: captures and its own flags
 */

const DEFAULT_SIZE = '1280x800';

/**
 * @param {readonly string[]} words
 * @param {string} folder relative paths are counted from here
 * @returns {StartWish}
 */
export function readStartArguments(words, folder) {
  /** @type {StartWish} */
  const wish = { snapshot: null, size: DEFAULT_SIZE, given: [] };
  const rest = words.flatMap((word) => {
    const cut = /^(--snapshot|--size)=(.*)$/.exec(word);
    return cut === null ? [word] : [String(cut[1]), String(cut[2])];
  });
  while (rest.length > 0) {
    const word = String(rest.shift());
    if (word === '--snapshot') wish.snapshot = resolve(folder, pictureName(rest.shift()));
    else if (word === '--size') wish.size = checkedSize(rest.shift());
    else wish.given.push(word.startsWith('-') ? word : resolve(folder, word));
  }
  return wish;
}

/** @param {string | undefined} name */
function pictureName(name) {
  if (name !== undefined && /\.png$/i.test(name)) return name;
  throw new SetupProblem({
    what: name === undefined ? '--snapshot names no file.' : `--snapshot makes a PNG picture, not ${name}.`,
    where: 'npm start',
    doNext: 'name the picture: npm start -- --snapshot window.png',
  });
}

/** @param {string | undefined} size */
function checkedSize(size) {
  const [, width, height] = /^(\d+)x(\d+)$/.exec(size ?? '') ?? [];
  const fits = (/** @type {string | undefined} */ pixels) => Number(pixels) >= 320 && Number(pixels) <= 8000;
  if (size !== undefined && fits(width) && fits(height)) return size;
  throw new SetupProblem({
    what: `${size ?? 'nothing'} is not a size of a window.`,
    where: 'npm start, --size',
    doNext: 'give width and height in pixels, each 320 to 8000: --size 1280x800',
  });
}
