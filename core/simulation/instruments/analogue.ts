import type { Hertz, Volts } from '../../units/quantities.ts';
import type { Random } from '../random.ts';
import type { Signal } from '../signals.ts';
import type { SimulatedDrive } from '../simulate.ts';
import { type Recording, signalReader } from './recording.ts';

/** A recorder clipped to the sensor wires. */
export interface AnalogueOptions {
  readonly rateHz: Hertz;
  /** Step of the converter: full scale over its counts. */
  readonly stepV: Volts;
  readonly noiseV: Volts;
  /** Ignition spikes: how many a second and how high. */
  readonly spikesPerS: number;
  readonly spikeV: Volts;
}

/** Records the drive at a fixed rate. Only oxygen voltages get the converter's step; other signals keep their own. */
export function recordAnalogue(
  drive: SimulatedDrive,
  signals: readonly Signal[],
  options: AnalogueOptions,
  random: Random,
): Recording {
  const length = Math.floor(drive.length * drive.stepS * options.rateHz);
  const timesS = new Float64Array(length);
  for (let i = 0; i < length; i++) timesS[i] = i / options.rateHz;
  const channels = signals.map((signal, k) => {
    const own = random.fork(300 + k);
    const isVoltage = signal.role === 'upstreamO2' || signal.role === 'downstreamO2';
    const reader = signalReader(drive, isVoltage ? { ...signal, step: 0, noise: options.noiseV } : signal, own);
    const values = new Float64Array(length);
    for (let i = 0; i < length; i++) {
      const value = reader(timesS[i] ?? 0);
      values[i] = isVoltage ? convert(value, options, own) : value;
    }
    return { signal, timesS, values };
  });
  return { channels };
}

function convert(volts: Volts, { rateHz, stepV, spikesPerS, spikeV }: AnalogueOptions, random: Random): Volts {
  const spike = random.chance(spikesPerS / rateHz) ? spikeV * (random.next() - 0.5) * 2 : 0;
  return Math.round((volts + spike) / stepV) * stepV;
}
