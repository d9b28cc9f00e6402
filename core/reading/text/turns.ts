/** So many channels take turns at most. */
const MOST_CHANNELS = 64;

/** A stretch of rows in which channels take turns, always in the same order. */
export interface Turns {
  /** Rows after which each channel comes again; all rows of one round have different channels. */
  readonly round: number;
  /** Whole rounds that follow each other; 0 where no channel comes again soon, or one comes twice in a round. */
  readonly rounds: number;
}

const NO_TURNS: Turns = { round: 1, rounds: 0 };

/**
 * The turns that begin at `row`, of `count` rows on a stage. `names` holds the number of each row's channel, `width` apart,
 * that of row 0 at `first`.
 */
export function turnsFrom(names: Float64Array, first: number, width: number, row: number, count: number): Turns {
  const begin = first + row * width;
  const end = first + count * width;
  const last = Math.min(end, begin + (MOST_CHANNELS + 1) * width);
  let again = begin + width;
  while (again < last && names[again] !== names[begin]) again += width;
  if (again >= last || hasTwice(names, begin, again, width)) return NO_TURNS;
  const apart = again - begin;
  while (again < end && names[again] === names[again - apart]) again += width;
  return { round: apart / width, rounds: Math.floor((again - begin) / apart) };
}

function hasTwice(names: Float64Array, begin: number, end: number, width: number): boolean {
  for (let one = begin; one < end; one += width)
    for (let other = begin; other < one; other += width) if (names[one] === names[other]) return true;
  return false;
}
