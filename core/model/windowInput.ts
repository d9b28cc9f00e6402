import type { Channel } from '../capture/channel.ts';
import { type Series, seriesOf, valuesWhere } from '../capture/series.ts';
import { remember } from '../signal/remember.ts';
import { quantilesOf } from '../statistics/quantile.ts';
import type { GramsPerSecond, Seconds } from '../units/quantities.ts';
import type { Stretch } from '../windows/window.ts';
import { airPulls } from './airPulls.ts';
import { airTrack } from './airTrack.ts';
import { evenSteps } from './evenSteps.ts';
import type { FitData } from './fit.ts';
import { oxygenFromLambda, oxygenFromVolts } from './frontOxygen.ts';
import type { ModelInput, RearCurve } from './storageModel.ts';
import { plateausOf, type Swing, swingOf } from './swing.ts';

/** A window made ready for the model. */
export interface WindowInput {
  /** A steady window, or the course of a fuel cut. */
  readonly kind: 'steady' | 'airPull';
  /** Moment of step 0, and the first step that belongs to the window. */
  readonly startS: Seconds;
  readonly firstStep: number;
  readonly input: ModelInput;
  readonly compared: Compared;
  readonly curve: RearCurve;
  readonly airGS: GramsPerSecond;
  readonly airRecorded: boolean;
  /** Half height of the swing, and where it was taken from. */
  readonly swing: number;
  readonly swingFrom: Swing['from'];
  /** Full swings of the front signal in the compared stretch. */
  readonly cycles: number;
}

/** Steps of the window at which the rear sensor was seen, thinned to what is worth computing. */
export interface Compared {
  readonly steps: Int32Array;
  readonly volts: Float64Array;
  /**
   * For windows in which only the waves count, not the slow wander: for each entry the first and one past the last
   * entry of its surroundings, whose mean miss is taken off. Null where the whole course counts.
   */
  readonly around: { readonly from: Int32Array; readonly to: Int32Array } | null;
}

/** The model runs this long before what is compared, so that it has forgotten how it began. */
const RUN_UP_S = 10;
const LONGEST_S = 90;
const BEFORE_PULL_S = 2;
const AFTER_PULL_S = 9;
const LONGEST_GAP_S = 1.6;
/** Values that are compared: enough to know a mean square by, and every one of them costs time. */
const MOST_COMPARED_STEADY = 240;
const MOST_COMPARED_PULL = 400;
const LEAST_AROUND_S = 5;
const CYCLES_AROUND = 2.5;

/** Brings front, rear and air of a window to even steps. Both sensors must have been recorded. */
export function windowInput(data: FitData, front: Channel, rear: Channel): WindowInput {
  const pull = pullIn(data, front);
  const fromS = pull ? Math.max(0, pull.startS - BEFORE_PULL_S) : data.window.startS;
  const endS = pull ? endOfPull(pull, front) : Math.min(data.window.endS, data.window.startS + LONGEST_S);
  const startS = Math.max(0, fromS - RUN_UP_S);
  const quick = Math.min(front.facts.medianRateHz, rear.facts.medianRateHz) >= 20;
  const stepS = quick ? 0.02 : 0.04;
  const count = Math.max(1, Math.floor((Math.min(endS, data.capture.durationS) - startS) / stepS) + 1);
  const firstStep = Math.min(count, Math.round((fromS - startS) / stepS));
  const swing = swingOf(data);
  const x = frontOxygen(front, swing.half, startS, stepS, count);
  const { airGS, recorded } = airTrack(data, startS, stepS, count);
  const rearV = binned(seriesOf(rear, startS - stepS, startS + count * stepS), startS, stepS, count);
  const cycles = countCycles(x, firstStep);
  const aroundS = Math.max(LEAST_AROUND_S, (CYCLES_AROUND * (count - firstStep) * stepS) / Math.max(1, cycles));
  return {
    kind: pull ? 'airPull' : 'steady',
    startS,
    firstStep,
    input: { stepS, x, airGS, rearV },
    compared: compared(rearV, x, firstStep, pull ? null : aroundS / stepS / 2),
    curve: rearCurve(rear),
    airGS: airGS.subarray(firstStep).reduce((sum, air) => sum + air, 0) / Math.max(1, count - firstStep),
    airRecorded: recorded,
    swing: swing.half,
    swingFrom: swing.from,
    cycles,
  };
}

/** The fuel cut that a window of such a kind is about: the longest that touches it. */
function pullIn({ window }: FitData, front: Channel): Stretch | null {
  if (window.kind !== 'fuelCut' && window.kind !== 'snap') return null;
  const touching = airPulls(front).filter(({ startS, endS }) => startS < window.endS + 1 && endS > window.startS - 1);
  return touching.sort((a, b) => b.endS - b.startS - (a.endS - a.startS))[0] ?? null;
}

/** The way back from a fuel cut is followed for some seconds, or until the next one. */
function endOfPull({ endS }: Stretch, front: Channel): Seconds {
  const next = airPulls(front).find(({ startS }) => startS > endS);
  return Math.min(endS + AFTER_PULL_S, next ? next.startS - 0.5 : Number.POSITIVE_INFINITY);
}

function frontOxygen(front: Channel, half: number, startS: Seconds, stepS: Seconds, count: number): Float64Array {
  const seen = seriesOf(front, startS - LONGEST_GAP_S, startS + count * stepS + LONGEST_GAP_S);
  const even = evenSteps(seen, startS, stepS, count, LONGEST_GAP_S);
  if (front.role === 'upstreamLambda') return even.map(oxygenFromLambda);
  const plateaus = plateausOf(front);
  const x = even.map((volts) => oxygenFromVolts(volts, plateaus, half));
  for (const pull of airPulls(front)) {
    const from = Math.max(0, Math.ceil((pull.startS - startS) / stepS));
    x.fill(1, from, Math.max(from, Math.floor((pull.endS - startS) / stepS) + 1));
  }
  return x;
}

/** Mean of the samples that fall on each step; NaN on steps without any. */
function binned({ timesS, values }: Series, startS: Seconds, stepS: Seconds, count: number): Float64Array {
  const sums = new Float64Array(count);
  const counts = new Float64Array(count);
  for (let i = 0; i < timesS.length; i++) {
    const k = Math.round(((timesS[i] ?? 0) - startS) / stepS);
    if (k < 0 || k >= count) continue;
    sums[k] = (sums[k] ?? 0) + (values[i] ?? 0);
    counts[k] = (counts[k] ?? 0) + 1;
  }
  return sums.map((sum, k) => sum / (counts[k] ?? 0));
}

function compared(rearV: Float64Array, x: Float64Array, first: number, halfSteps: number | null): Compared {
  const all: number[] = [];
  for (let k = first; k < rearV.length; k++)
    if (Number.isFinite(rearV[k] ?? Number.NaN) && Number.isFinite(x[k] ?? Number.NaN)) all.push(k);
  const most = halfSteps === null ? MOST_COMPARED_PULL : MOST_COMPARED_STEADY;
  const every = Math.max(1, Math.ceil(all.length / most));
  const steps = Int32Array.from(all.filter((_, i) => i % every === 0));
  const volts = Float64Array.from(steps, (k) => rearV[k] ?? 0);
  if (halfSteps === null) return { steps, volts, around: null };
  const from = new Int32Array(steps.length);
  const to = new Int32Array(steps.length);
  let a = 0;
  let b = 0;
  for (let i = 0; i < steps.length; i++) {
    const at = steps[i] ?? 0;
    while ((steps[a] ?? 0) < at - halfSteps) a++;
    while (b < steps.length && (steps[b] ?? 0) <= at + halfSteps) b++;
    from[i] = a;
    to[i] = b;
  }
  return { steps, volts, around: { from, to } };
}

function countCycles(x: Float64Array, first: number): number {
  let side = 0;
  let changes = 0;
  for (let k = first; k < x.length; k++) {
    const now = x[k] ?? Number.NaN;
    const next = now > 0.003 ? 1 : now < -0.003 ? -1 : side;
    if (next !== side && side !== 0) changes++;
    if (Number.isFinite(now)) side = next;
  }
  return changes / 2;
}

/** Usual rear voltages at 2 % lean and 2 % rich, and what a fuel cut and an enrichment add to them (Nernst). */
const REAR_LEAN_V = 0.09;
const REAR_RICH_V = 0.83;
const CUT_BELOW_V = 0.07;
const ENRICHED_ABOVE_V = 0.05;
const MOST_SHIFT_V = 0.06;

/** Branches of the rear sensor: shifted to what it showed at its ends in this capture, where it reached them. */
const rearCurve = remember((rear: Channel): RearCurve => {
  const [low = 1, high = 0] =
    rear.facts.finite > 0 ? quantilesOf(valuesWhere(rear, Number.isFinite), [0.005, 0.99]) : [];
  const shift = (seen: number, usual: number) => Math.max(-MOST_SHIFT_V, Math.min(MOST_SHIFT_V, seen - usual));
  return {
    leanV: REAR_LEAN_V + (low < 0.2 ? shift(low, REAR_LEAN_V - CUT_BELOW_V) : 0),
    richV: REAR_RICH_V + (high > 0.75 ? shift(high, REAR_RICH_V + ENRICHED_ABOVE_V) : 0),
    width: 0.0028,
  };
});
