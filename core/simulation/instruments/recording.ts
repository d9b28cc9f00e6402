import type { Seconds, Volts } from '../../units/quantities.ts';
import type { Random } from '../random.ts';
import type { Signal } from '../signals.ts';
import type { SimulatedDrive } from '../simulate.ts';

/** What an instrument wrote down: one list of values per signal. NaN where it got no answer. */
export interface Recording {
  readonly channels: readonly RecordedChannel[];
}

/** Channels that were written in one row share one `timesS`. */
export interface RecordedChannel {
  readonly signal: Signal;
  readonly timesS: Float64Array;
  readonly values: Float64Array;
}

/**
 * A reader of one signal at any moment, with its noise and rounded to its steps. Between simulated steps all but the fuel
 * system's status run straight; everything before the start or after the end is the first or last value. No oxygen voltage
 * is under 0: the converters of the instruments do not read below ground.
 */
export function signalReader(drive: SimulatedDrive, signal: Signal, random: Random): (timeS: Seconds) => number {
  const truth = signal.read(drive);
  const last = drive.length - 1;
  const { step } = signal;
  const noise = signal.noise ?? sensorNoise(drive, signal);
  return (timeS) => {
    const place = Math.min(last, Math.max(0, timeS / drive.stepS));
    const index = Math.floor(place);
    const low = truth[index] ?? 0;
    const high = truth[Math.min(last, index + 1)] ?? low;
    const exact = signal.role === 'fuelStatus' ? low : low + (high - low) * (place - index);
    const noisy = exact + (noise > 0 ? noise * random.gauss() : 0);
    const shown = step > 0 ? Math.round(noisy / step) * step : noisy;
    return signal.role === 'upstreamO2' || signal.role === 'downstreamO2' ? Math.max(0, shown) : shown;
  };
}

function sensorNoise(drive: SimulatedDrive, { bank, sensor }: Signal): Volts {
  const parameters = drive.vehicle.banks[(bank ?? 1) - 1];
  if (!parameters) return 0;
  if (sensor !== 1) return parameters.rear.noiseV;
  return parameters.front.kind === 'switching' ? parameters.front.cell.noiseV : 0;
}
