// What happened to rows and cells while a text was read, counted so that it can be told in a few sentences.
import { shownText } from '../shownText.ts';

/** An event that may happen many times: how often, where first, and what stood there. */
export interface Tally {
  count: number;
  line: number;
  sample: string;
}

export class TextTally {
  /** Rows that hold no time or no number, by what they look like. */
  readonly skipped: Tally = newTally();
  readonly headers: Tally = newTally();
  /** The header of another table, behind which nothing was read. */
  readonly otherTable: Tally = newTally();
  /** Rows of zero bytes. */
  readonly zeros: Tally = newTally();
  /** Rows parted by blanks that lack a value, and nobody can say which. */
  readonly unplaced: Tally = newTally();
  readonly short: Tally = newTally();
  readonly long: Tally = newTally();
  /** The last row had no line end: cut in the middle and dropped, or whole. */
  readonly cut: Tally = newTally();
  readonly open: Tally = newTally();
  /** Cells that are neither number nor a word for "no value"; one tally a column. */
  readonly unreadable = new Map<number, Tally>();
  /** Words for "no value", counted over all columns. */
  readonly missing: Tally = newTally();

  /** Set when the last row is among those that are read next, and has no line end of its own. */
  openEnd = false;

  unreadableCell(column: number, line: number, sample: string): void {
    const tally = this.unreadable.get(column) ?? newTally();
    this.unreadable.set(column, tally);
    add(tally, line, sample);
  }
}

/** Counts one more; the first one is the sample. */
export function add(tally: Tally, line: number, sample: string): void {
  if (tally.count === 0) {
    tally.line = line;
    tally.sample = shownText(sample, 40);
  }
  tally.count++;
}

function newTally(): Tally {
  return { count: 0, line: 0, sample: '' };
}
