import type { Grams, Seconds } from '../units/quantities.ts';
import {
  CAPACITY_GRID_G,
  CAPACITY_STEP,
  DELAY_GRID_S,
  LAG_GRID_S,
  type Passage,
  RATE_GRID,
  TABLE_LENGTH,
  tableIndex,
} from './capacityGrid.ts';
import type { CapacityProfile } from './fit.ts';
import type { Misses } from './missTable.ts';

/**
 * Independent pieces that a steady window and a fuel cut count for. Misses of the model are alike from one swing to the
 * next, so that a minute of swings is not sixty observations. Chosen on the calibration split so that the 95 % interval
 * of the capacity holds the truth in 90 to 99 % of the cases.
 */
const PIECES_STEADY = 12;
const PIECES_AIR_PULL = 12;
/** A fuel cut without recorded air: what flows on the way back from it may be several times what is supposed. */
const PIECES_AIR_SUPPOSED = 6;
/** Fewest values for each piece of a fuel cut: a slow instrument sees little of the way there and back. */
const VALUES_A_PIECE = 5;
const LEAST_PIECES_AIR_PULL = 2;
/** Fewest front swings for each piece of a steady window. */
const SWINGS_A_PIECE = 3;
/** Miss of a perfect model: sensor noise and steps of the instrument, V. */
const LEAST_MISS_V = 0.012;
/** Miss of this model, share of the rear trace's own swing. */
const MODEL_MISS = 0.2;
/** Uncertainty of the mean square of the model's waves, in its logarithm: a factor of 1.6 in their height. */
const WAVE_SPREAD = 1;

/** Usual lag and delay of a healthy rear sensor, and how far off others lie (logarithm for the lag). */
const USUAL_LAG_S: Seconds = 0.22;
const LAG_SPREAD = 0.6;
const USUAL_DELAY_S: Seconds = 0.15;
const DELAY_SPREAD_S = 0.2;

/** What decides how much a table of misses counts. */
export interface MissWeight {
  readonly kind: 'steady' | 'airPull';
  readonly cycles: number;
  readonly airRecorded: boolean;
  /** Values of the rear sensor that were compared. */
  readonly values: number;
}

/**
 * Logarithm of the likelihood for each entry of a table of misses: -n/2 ln(miss² + least²), n pieces. In steady windows the
 * size of the waves counts beside their course: an instrument that holds its values for half a swing spoils when they
 * come, and not how large they are.
 */
export function logLikelihoods({ left, waves, recorded }: Misses, weight: MissWeight): Float64Array {
  const pieces = piecesOf(weight);
  const floor = LEAST_MISS_V ** 2 + MODEL_MISS ** 2 * recorded;
  const table = left.map((square) => (-pieces / 2) * Math.log(square + floor));
  if (weight.kind === 'airPull') return table;
  const seen = Math.log(recorded + LEAST_MISS_V ** 2);
  const sizes = waves.map((square) => -0.5 * ((seen - Math.log(square + LEAST_MISS_V ** 2)) / WAVE_SPREAD) ** 2);
  return table.map((value, i) => value + (sizes[Math.floor(i / DELAY_GRID_S.length)] ?? 0));
}

function piecesOf({ kind, cycles, airRecorded, values }: MissWeight): number {
  if (kind === 'airPull') {
    const most = airRecorded ? PIECES_AIR_PULL : PIECES_AIR_SUPPOSED;
    return Math.min(most, Math.max(LEAST_PIECES_AIR_PULL, values / VALUES_A_PIECE));
  }
  return Math.min(PIECES_STEADY, Math.max(1, cycles / SWINGS_A_PIECE));
}

/** Sum of tables of windows that share converter and rear sensor, each times its weight. An empty list gives a table of zeros. */
export function addTables(parts: readonly { readonly table: Float64Array; readonly weight: number }[]): Float64Array {
  const sum = new Float64Array(TABLE_LENGTH);
  for (const { table, weight } of parts)
    for (let i = 0; i < TABLE_LENGTH; i++) sum[i] = (sum[i] ?? 0) + weight * (table[i] ?? 0);
  return sum;
}

/** Likelihood of each capacity alone: rate, lag and delay summed over, each weighed by how usual it is. */
export function profileOf(table: Float64Array): CapacityProfile {
  const most = table.reduce((high, value) => Math.max(high, value), Number.NEGATIVE_INFINITY);
  const sums = Float64Array.from(CAPACITY_GRID_G, (_, capacity) => {
    let sum = 0;
    eachPassage((rate, lag, delay, usual) => {
      sum += Math.exp((table[tableIndex(rate, capacity, lag, delay)] ?? 0) - most + usual);
    });
    return Math.log(Math.max(1e-300, sum));
  });
  const highest = sums.reduce((high, value) => Math.max(high, value), Number.NEGATIVE_INFINITY);
  return { capacityG: Float64Array.from(CAPACITY_GRID_G), logLikelihood: sums.map((value) => value - highest) };
}

/** Rate, lag and delay that go best with one capacity. */
export function bestPassage(table: Float64Array, capacity: number): Passage {
  let best = Number.NEGATIVE_INFINITY;
  let found: readonly [number, number, number] = [0, 0, 0];
  eachPassage((rate, lag, delay, usual) => {
    const value = (table[tableIndex(rate, capacity, lag, delay)] ?? 0) + usual;
    if (value <= best) return;
    best = value;
    found = [rate, lag, delay];
  });
  const [rate, lag, delay] = found;
  return {
    rate: RATE_GRID[rate] ?? 0,
    lagS: LAG_GRID_S[lag] ?? USUAL_LAG_S,
    delayS: DELAY_GRID_S[delay] ?? USUAL_DELAY_S,
  };
}

/** Goes through the grids of rate, lag and delay; `usual` is the logarithm of how usual lag and delay are. */
function eachPassage(see: (rate: number, lag: number, delay: number, usual: number) => void): void {
  for (let lag = 0; lag < LAG_GRID_S.length; lag++)
    for (let delay = 0; delay < DELAY_GRID_S.length; delay++) {
      const usual = usualness(lag, delay);
      for (let rate = 0; rate < RATE_GRID.length; rate++) see(rate, lag, delay, usual);
    }
}

function usualness(lag: number, delay: number): number {
  const lagOff = Math.log((LAG_GRID_S[lag] ?? 1) / USUAL_LAG_S) / LAG_SPREAD;
  const delayOff = ((DELAY_GRID_S[delay] ?? 0) - USUAL_DELAY_S) / DELAY_SPREAD_S;
  return -0.5 * (lagOff * lagOff + delayOff * delayOff);
}

/** What a profile says of the capacity. */
export interface CapacityEstimate {
  readonly capacityG: Grams;
  /** 95 %: null at an end that the profile leaves open. */
  readonly interval: readonly [Grams | null, Grams | null];
}

/** An end of the grid whose likelihood is within this of the best cannot be excluded: the interval is open there. */
const OPEN_WITHIN = 1.92;

/**
 * Mean in the logarithm, and the middle 95 %, of the likelihood as a distribution over the logarithm of the capacity
 * (every factor alike likely beforehand), widened by what no window can tell (widened).
 */
export function estimateFrom(profile: CapacityProfile, unknown: number): CapacityEstimate {
  const { capacityG, logLikelihood } = profile;
  const weights = widened(profile, unknown);
  const total = weights.reduce((sum, value) => sum + value, 0);
  let mean = 0;
  weights.forEach((weight, i) => {
    mean += (weight / total) * Math.log(capacityG[i] ?? 1);
  });
  const last = logLikelihood.length - 1;
  const low = (logLikelihood[0] ?? 0) > -OPEN_WITHIN ? null : quantile(capacityG, weights, 0.025 * total);
  const high = (logLikelihood[last] ?? 0) > -OPEN_WITHIN ? null : quantile(capacityG, weights, 0.975 * total);
  return { capacityG: Math.exp(mean), interval: [low, high] };
}

/**
 * Likelihood of each capacity, not its logarithm, once what no window can tell is allowed for: `unknown` is the
 * deviation, in the logarithm, of everything that scales the capacity as a whole, as the height of the swing. Each is the
 * mean of its surroundings, weighed by a normal curve; at its highest 1 or below.
 */
export function widened({ logLikelihood }: CapacityProfile, unknown: number): Float64Array {
  const steps = unknown / CAPACITY_STEP;
  const reach = Math.ceil(4 * steps);
  return logLikelihood.map((_, k) => {
    let sum = 0;
    let total = 0;
    for (let i = Math.max(0, k - reach); i <= Math.min(logLikelihood.length - 1, k + reach); i++) {
      const near = Math.exp(-0.5 * ((k - i) / steps) ** 2);
      sum += near * Math.exp(logLikelihood[i] ?? 0);
      total += near;
    }
    return sum / total;
  });
}

/** Capacity below which `part` of the weight lies, each grid point's weight spread over its step. */
function quantile(capacityG: Float64Array, weights: Float64Array, part: number): Grams {
  let sum = 0;
  for (let i = 0; i < weights.length; i++) {
    const weight = weights[i] ?? 0;
    if (sum + weight >= part && weight > 0)
      return (capacityG[i] ?? 0) * Math.exp(CAPACITY_STEP * ((part - sum) / weight - 0.5));
    sum += weight;
  }
  return capacityG[capacityG.length - 1] ?? 0;
}
