import type { Hertz, Seconds } from '../../units/quantities.ts';
import type { Random } from '../random.ts';
import type { Signal } from '../signals.ts';
import type { SimulatedDrive } from '../simulate.ts';
import { type Recording, signalReader } from './recording.ts';

/** A logger that writes all channels at a fixed rate, whatever is newest: values are held between renewals. */
export interface LoggerOptions {
  readonly rateHz: Hertz;
  /** Spread of the row times. */
  readonly jitterS: Seconds;
  /** How often the oxygen sensors and the slower channels are renewed behind the rows; rateHz for no holding. */
  readonly sensorHz: Hertz;
  readonly otherHz: Hertz;
  readonly latencyS: Seconds;
  /** Share of the values that are missing. */
  readonly lost: number;
}

/** Logs a drive from start to end. */
export function logDrive(
  drive: SimulatedDrive,
  signals: readonly Signal[],
  options: LoggerOptions,
  random: Random,
): Recording {
  const length = Math.floor(drive.length * drive.stepS * options.rateHz);
  const timesS = new Float64Array(length);
  for (let i = 0; i < length; i++) timesS[i] = i / options.rateHz + options.jitterS * (random.next() - 0.5);
  const channels = signals.map((signal, k) => {
    const own = random.fork(200 + k);
    const reader = signalReader(drive, signal, own);
    const fast = signal.sensor !== null;
    const everyS = 1 / Math.min(options.rateHz, fast ? options.sensorHz : options.otherHz);
    const phaseS = everyS * own.next();
    return { signal, timesS, values: heldValues(timesS, reader, everyS, phaseS, options, own) };
  });
  return { channels };
}

function heldValues(
  timesS: Float64Array,
  reader: (timeS: Seconds) => number,
  everyS: Seconds,
  phaseS: Seconds,
  { rateHz, latencyS, lost }: LoggerOptions,
  random: Random,
): Float64Array {
  const values = new Float64Array(timesS.length);
  let renewedAt = Number.NEGATIVE_INFINITY;
  let held = Number.NaN;
  const tolerance = 0.25 / rateHz;
  for (let i = 0; i < timesS.length; i++) {
    const timeS = timesS[i] ?? 0;
    const slot = Math.floor((timeS + phaseS + tolerance) / everyS);
    if (slot > renewedAt) {
      renewedAt = slot;
      held = reader(timeS - latencyS);
    }
    values[i] = lost > 0 && random.chance(lost) ? Number.NaN : held;
  }
  return values;
}
