// Channels invented for the tests of drawing: a warmed engine that idles, holds, snaps and coasts down, with one bank
// whose converter stores and, on demand, a second whose converter does not. Made from a seed, the same on every machine.

import type { Bank, Role } from '../../core/capture/roles.ts';
import type { InventedChannel } from './syntheticSource.ts';

interface Grid {
  readonly rateHz: number;
  readonly durationS: number;
}

/** A plain sine for tests that need no engine. */
export function sineChannel(wish: Grid & { readonly id: string }): InventedChannel {
  return sampled(wish.id, 'other', null, null, wish, (timeS) => Math.sin(timeS));
}

/** The channels of one drive. `banks` 2 adds a second pair of sensors; `seed` changes the noise alone. */
export function inventedDrive(wish: Grid & { readonly banks: 1 | 2; readonly seed: number }): InventedChannel[] {
  const next = uniform(wish.seed);
  const noise = (width: number): number => (next() + next() + next() - 1.5) * width;
  const step5mV = (volts: number): number => Math.round(volts * 200) / 200;
  const pair = (bank: Bank, share: number): InventedChannel[] => [
    sampled(`up${bank}`, 'upstreamO2', bank, 1, wish, (timeS) => step5mV(front(timeS, bank ?? 1) + noise(0.02))),
    sampled(`down${bank}`, 'downstreamO2', bank, 2, wish, (timeS) =>
      step5mV(rear(timeS, share, bank ?? 1) + noise(0.012)),
    ),
  ];
  return [
    ...pair(1, 0.04),
    ...(wish.banks === 2 ? pair(2, 0.75) : []),
    sampled('rpm', 'rpm', null, null, wish, (timeS) => Math.round(engineSpeed(timeS, wish.durationS) + noise(40))),
    sampled('coolant', 'coolant', null, null, wish, (timeS) => Math.round(92 - 60 * Math.exp(-timeS / 95))),
    sampled('stft', 'stft', 1, null, wish, (timeS) => 3 * Math.sin(timeS * 1.3) + noise(2)),
    sampled('ltft', 'ltft', 1, null, wish, () => 2.3),
    sampled('speed', 'speed', null, null, wish, () => 0),
  ];
}

function sampled(
  id: string,
  role: Role,
  bank: Bank,
  sensor: number | null,
  { rateHz, durationS }: Grid,
  value: (timeS: number) => number,
): InventedChannel {
  const count = Math.floor(durationS * rateHz) + 1;
  const timesS = Float64Array.from({ length: count }, (_, i) => i / rateHz);
  const values = Float32Array.from(timesS, value);
  return { id, name: `${role}-${id}`, role, bank, sensor, timesS, values, steps: false, gapS: 4 / rateHz };
}

/** Idle, a hold at 2300, two snaps, a hold at 2450, a coast-down, idle; in shares of the whole. */
function engineSpeed(timeS: number, durationS: number): number {
  const share = timeS / durationS;
  const near = (middle: number): number => Math.exp(-(((share - middle) / 0.008) ** 2));
  if (share < 0.16) return 820;
  if (share < 0.42) return 2310 + 25 * Math.sin(timeS / 7);
  if (share < 0.56) return 840 + 3100 * near(0.46) + 2700 * near(0.51);
  if (share < 0.8) return 2440 + 20 * Math.sin(timeS / 5);
  if (share < 0.88) return 2440 - ((share - 0.8) / 0.08) * 1600;
  return 830;
}

/** A front sensor in closed loop: it dwells near both ends and crosses fast. */
function front(timeS: number, bank: number): number {
  const phase = timeS * 2 * Math.PI * (bank === 1 ? 1.1 : 0.9) + 0.8 * Math.sin(timeS / 9);
  return 0.45 + 0.38 * Math.tanh(3.2 * Math.sin(phase));
}

function rear(timeS: number, share: number, bank: number): number {
  const calm = 0.64 + 0.07 * Math.sin(timeS / 23) + 0.03 * Math.sin(timeS / 4.1);
  return calm * (1 - share) + share * front(timeS - 0.25, bank);
}

/** Numerical Recipes' quick generator (ranqd1), 0 to 1. */
function uniform(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 0x1_0000_0000;
  };
}
