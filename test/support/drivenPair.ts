// A front and a rear sensor as a textbook draws them, for laws about scoring: the front switches with a period that is
// never quite even, the rear shows a share of it, later and rounder. Drawn from a seed; smooth, so that it may be sampled
// at any moment.

import type { Capture } from '../../core/capture/capture.ts';
import { seededUniform } from '../../core/statistics/seededUniform.ts';
import { captureOf } from './drawTrace.ts';

export interface DrivenPair {
  readonly seed: number;
  readonly seconds: number;
  /** Mean switching frequency. */
  readonly hz: number;
  /** Share of the front swing that arrives behind, 0 to 1. */
  readonly through: number;
  readonly lagS: number;
}

/** The two voltages at any moment. */
export function pairAt({ seed, seconds, hz, through, lagS }: DrivenPair): {
  front: (timeS: number) => number;
  rear: (timeS: number) => number;
} {
  const next = seededUniform(seed);
  // Phase at each whole period, wandering by up to a tenth of a period from one to the next.
  const starts = [-4];
  while ((starts[starts.length - 1] ?? 0) < seconds + 4)
    starts.push((starts[starts.length - 1] ?? 0) + (0.9 + 0.2 * next()) / hz);
  const phase = (timeS: number): number => {
    let k = 0;
    while (k + 1 < starts.length && (starts[k + 1] ?? 0) <= timeS) k++;
    const from = starts[k] ?? 0;
    const to = starts[k + 1] ?? from + 1 / hz;
    return k + (timeS - from) / (to - from);
  };
  const wave = (timeS: number): number => Math.tanh(4 * Math.sin(2 * Math.PI * phase(timeS)));
  return {
    front: (timeS) => 0.46 + 0.36 * wave(timeS),
    rear: (timeS) => 0.58 + 0.36 * through * Math.sin(2 * Math.PI * phase(timeS - lagS)) + 0.03 * Math.sin(1.1 * timeS),
  };
}

/** The pair as a capture of a warm engine held at 2250 1/min. */
export function pairCapture(pair: DrivenPair, rateHz: number, startS = 0): Capture {
  const { front, rear } = pairAt(pair);
  const shared = { rateHz, seconds: pair.seconds, startS };
  return captureOf([
    { ...shared, role: 'upstreamO2', bank: 1, sensor: 1, values: (t) => front(t - startS) },
    { ...shared, role: 'downstreamO2', bank: 1, sensor: 2, values: (t) => rear(t - startS) },
    { role: 'rpm', rateHz: 2, seconds: pair.seconds + startS, values: () => 2250 },
    { role: 'coolant', rateHz: 1, seconds: pair.seconds + startS, values: () => 90 },
  ]);
}
