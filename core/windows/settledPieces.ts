import type { Seconds } from '../units/quantities.ts';
import type { Stretch } from './window.ts';

/** Time after a change of speed in which trims and sensors settle (common practice, no source: 10 to 15 s). */
const SETTLE_S: Seconds = 12;
/** What must be left for settling to be cut off. */
const WORTH_S: Seconds = 25;
/** A longer stretch is offered in pieces: a verdict over minutes hides that conditions drift. */
const LONGEST_S: Seconds = 120;

/** A steady stretch without its settling, cut into even pieces of at most two minutes. Short ones stay whole. */
export function settledPieces(stretch: Stretch): Stretch[] {
  const length = stretch.endS - stretch.startS;
  const startS = length >= SETTLE_S + WORTH_S ? stretch.startS + SETTLE_S : stretch.startS;
  const pieces = Math.max(1, Math.ceil((stretch.endS - startS) / LONGEST_S));
  const pieceS = (stretch.endS - startS) / pieces;
  return Array.from({ length: pieces }, (_, i) => ({ startS: startS + i * pieceS, endS: startS + (i + 1) * pieceS }));
}
