import type { Outcome } from '../problem.ts';
import type { ReadCapture, ReadOptions } from '../readCapture.ts';

/** The beginning of a file, unpacked where it was packed. */
export interface FileHead {
  readonly name: string;
  /** The first bytes: 256 KiB, or the whole file where it is shorter. */
  readonly bytes: Uint8Array;
  /** Whether `bytes` is the whole file. */
  readonly whole: boolean;
}

/** What a layout reads from. */
export interface LayoutInput {
  readonly head: FileHead;
  /** All bytes of the file from the first on, those of the head too. Can be walked once. Chunks are not to be changed. */
  readonly chunks: AsyncIterable<Uint8Array>;
  /** Bytes of the file where that is known before it is read. */
  readonly bytesTotal: number | null;
  readonly options: ReadOptions;
  /** Report progress and ask whether to go on; false means that the person has cancelled. */
  goesOn(rows: number): boolean;
}

/**
 * A text layout or file format. To add one, write a file with a Layout in this folder, give it a line in index.ts and a
 * folder of samples in test/fixtures/layouts; everyLayout.test.ts runs them at once.
 */
export interface Layout {
  readonly id: string;
  /** For people: "Text, one row for each moment". */
  readonly words: string;
  /**
   * How sure it is, from the first bytes and the name: 1 by a signature, 0.5 for a text that fits, 0 not at all. Must be
   * quick and must not throw for any bytes. The surest layout reads; the earlier in the list where two are equally sure.
   */
  sniff(head: FileHead): number;
  /** Reads the file. Refuses with a value, never by throwing, whatever the bytes are. */
  read(input: LayoutInput): Promise<Outcome<ReadCapture>>;
}
