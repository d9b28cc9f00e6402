import type { Problem } from '../problem.ts';
import { REFUSALS } from '../refusals.ts';

/** Packed text of instruments grows 3 to 60 times; DEFLATE can at most 1032 times. Beyond this it is no recording. */
const MOST_TIMES = 400;
/** Small files may be very regular, so the ratio counts only from here on, bytes. */
const FREE_BYTES = 16 * 1024 * 1024;
/** No more than this comes out of one packed file, bytes. */
const MOST_BYTES = 16 * 1024 ** 3;

/**
 * Counts what goes into and comes out of an inflater while it works, because headers lie about sizes. Slices are kept so
 * small that one of them cannot overshoot by more than a few megabytes.
 */
export class ExpansionGuard {
  private readonly name: string;
  private taken = 0;
  private given = 0;

  constructor(name: string) {
    this.name = name;
  }

  /** Bytes of packed data to hand over at once. */
  get slice(): number {
    return this.given > FREE_BYTES && this.given > this.taken * 100 ? 1024 : 16 * 1024;
  }

  get bytesGiven(): number {
    return this.given;
  }

  took(bytes: number): void {
    this.taken += bytes;
  }

  gave(bytes: number): void {
    this.given += bytes;
  }

  /** The refusal once a limit is passed, else null. */
  problem(): Problem | null {
    if (this.given > MOST_BYTES) return REFUSALS.expandsTooMuch(this.name, 'more than 16 GiB');
    if (this.given > FREE_BYTES && this.given > this.taken * MOST_TIMES) {
      return REFUSALS.expandsTooMuch(this.name, `more than ${MOST_TIMES} times its size`);
    }
    return null;
  }
}
