import type { Seconds } from '../units/quantities.ts';
import type { Channel } from './channel.ts';
import type { Reported } from './reported.ts';
import type { Bank, Role } from './roles.ts';
import type { CaptureWarning } from './warnings.ts';

/** One recorded file, read. Never changed: a different choice of columns makes another Capture of the same bytes. */
export interface Capture {
  /** File name without folders. */
  readonly name: string;
  /** Size of the file in bytes, as it was read. */
  readonly bytes: number;
  /** From the first sample of any channel to the last. */
  readonly durationS: Seconds;
  /** Rows of data in the file (messages, for a log of messages). */
  readonly rows: number;
  /**
   * The clock at second 0, ISO 8601, or null where the file has no clock. Without an offset it is a local time of the
   * place where it was recorded, never assumed to be UTC.
   */
  readonly startClock: string | null;
  readonly channels: readonly Channel[];
  readonly warnings: readonly CaptureWarning[];
  readonly layout: LayoutFound;
  /** Codes, monitors and tests that a log of the diagnostic connector holds; absent for every other layout. */
  readonly reported?: Reported;
}

/** How the file was laid out, told to the person and kept with the capture. */
export interface LayoutFound {
  /** Id of the layout in core/reading/layouts. */
  readonly id: string;
  /** One sentence: "Text, semicolons, decimal commas, header in row 3, units in row 4, clock times". */
  readonly words: string;
  /** Hash of the header's words, by which an earlier choice of columns is found again; not cryptographic. */
  readonly headerKey: string;
}

/** The first channel with this role on this bank, or null. Bank null matches channels of the whole engine only. */
export function findChannel(capture: Capture, role: Role, bank: Bank = null, sensor?: number): Channel | null {
  for (const channel of capture.channels) {
    if (channel.role !== role || channel.bank !== bank) continue;
    if (sensor === undefined || channel.sensor === null || channel.sensor === sensor) return channel;
  }
  return null;
}

/** Banks that have an upstream or downstream oxygen channel, ascending. Empty where the capture has none. */
export function banksOf(capture: Capture): (1 | 2)[] {
  const found = new Set<1 | 2>();
  for (const { role, bank } of capture.channels) {
    if (bank === null) continue;
    if (role === 'upstreamO2' || role === 'upstreamLambda' || role === 'downstreamO2') found.add(bank);
  }
  return [...found].sort();
}
