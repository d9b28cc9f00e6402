import type { Outcome, Problem } from '../reading/problem.ts';
import type { ByteSource } from '../reading/readCapture.ts';

/**
 * What the service needs from the place it runs in: a process of the shell, or a worker of a window. Both give bytes for
 * a token and a clock; neither gives paths.
 */
export interface CoreHost {
  /** The bytes behind a token of the shell. A string that is no token is refused, and nothing is read. */
  openBytes(token: string, wanted: WantedBytes): Promise<Outcome<HeldBytes>>;
  /** Milliseconds since any fixed moment. */
  nowMs(): number;
  /** Bytes that the values of a capture may take now; one that needs more is refused. */
  captureMemory(): Promise<number>;
  /** Resolves after messages that have arrived meanwhile were delivered. */
  pause(): Promise<void>;
  /** Told of faults in the program itself; a host may write them down. */
  tellFault(fault: unknown): void;
}

/** What a file is opened for: to be read whole and hashed, or for a look at its first rows, whose hash nobody needs. */
export type WantedBytes = 'whole' | 'firstRows';

/** An opened file. */
export interface HeldBytes {
  /** Its chunks may throw SourceFault where the file vanishes or cannot be read on. */
  readonly source: ByteSource;
  /**
   * Call after reading. Gives the SHA-256 of the bytes as they were read, in lower-case hexadecimal digits; refuses
   * where the file changed while it was read.
   */
  finish(): Promise<Outcome<{ readonly sha256: string }>>;
  /** Lets the file go; may be called at any moment. */
  close(): Promise<void>;
}

/** Thrown by a source whose bytes stop coming, with the words for the person. */
export class SourceFault extends Error {
  readonly problem: Problem;
  constructor(problem: Problem) {
    super(problem.what);
    this.name = 'SourceFault';
    this.problem = problem;
  }
}
