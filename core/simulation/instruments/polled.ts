import type { Seconds } from '../../units/quantities.ts';
import type { Random } from '../random.ts';
import type { Signal } from '../signals.ts';
import type { SimulatedDrive } from '../simulate.ts';
import { type Recording, signalReader } from './recording.ts';

/** A data list that asks for one value after another and writes a row when all have answered. */
export interface PolledOptions {
  /** Answers a second, shared by all channels. */
  readonly answersPerS: number;
  /** Spread of the time of each answer, share of it. */
  readonly jitter: number;
  /** Age of a value when it arrives. */
  readonly latencyS: Seconds;
  /** Share of the answers that never come; the cell stays empty. */
  readonly lost: number;
  /** Share of the sweeps after which the instrument pauses, and how long at most. */
  readonly pauses: number;
  readonly pauseS: Seconds;
  /** True for an instrument that writes each value with its own time instead of whole rows. */
  readonly ownTimes?: boolean;
}

/** Polls a drive from start to end. Each value was true at its own moment; the row carries the moment it was full. */
export function pollDrive(
  drive: SimulatedDrive,
  signals: readonly Signal[],
  options: PolledOptions,
  random: Random,
): Recording {
  const readers = signals.map((signal, k) => signalReader(drive, signal, random.fork(100 + k)));
  const endS = drive.length * drive.stepS;
  const rows: number[] = [];
  const columns: number[][] = signals.map(() => []);
  const moments: number[][] = signals.map(() => []);
  let timeS = 0;
  while (timeS < endS) {
    for (let k = 0; k < readers.length; k++) {
      timeS += Math.max(0.2, 1 + options.jitter * random.gauss()) / options.answersPerS;
      const value = random.chance(options.lost) ? Number.NaN : (readers[k]?.(timeS - options.latencyS) ?? Number.NaN);
      columns[k]?.push(value);
      if (options.ownTimes) moments[k]?.push(timeS);
    }
    rows.push(timeS);
    if (options.pauses > 0 && random.chance(options.pauses)) timeS += options.pauseS * random.next();
  }
  const timesS = Float64Array.from(rows);
  return {
    channels: signals.map((signal, k) => ({
      signal,
      timesS: options.ownTimes ? Float64Array.from(moments[k] ?? []) : timesS,
      values: Float64Array.from(columns[k] ?? []),
    })),
  };
}
