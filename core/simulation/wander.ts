import type { Seconds } from '../units/quantities.ts';
import type { Random } from './random.ts';

/**
 * A slow random wander about 0: an Ornstein-Uhlenbeck process with the given deviation and memory, stepped exactly.
 * Returns a function that gives the next value, `stepS` later each call. Starts in its steady state.
 * Source: G. E. Uhlenbeck, L. S. Ornstein, Phys. Rev. 36 (1930) 823.
 */
export function createWander(random: Random, deviation: number, memoryS: Seconds, stepS: Seconds): () => number {
  const keep = Math.exp(-stepS / memoryS);
  const kick = deviation * Math.sqrt(1 - keep * keep);
  let value = deviation * random.gauss();
  return () => {
    value = keep * value + kick * random.gauss();
    return value;
  };
}

/** Share by which a first-order lag with time constant `tauS` closes its gap in one step. 1 for no lag. */
export function lagShare(tauS: Seconds, stepS: Seconds): number {
  return tauS > 0 ? 1 - Math.exp(-stepS / tauS) : 1;
}
