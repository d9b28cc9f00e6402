import type { Channel } from '../capture/channel.ts';
import { seriesOf } from '../capture/series.ts';
import { fastestSwitching } from '../signal/aliasing.ts';
import { median } from '../statistics/quantile.ts';
import type { GramsPerSecond, Seconds, Volts } from '../units/quantities.ts';
import { engineTrack, trackedBetween } from '../windows/engineTrack.ts';
import { capacityFacts } from './capacityFacts.ts';
import { CONVERTERS, DELAY_GRID_S, LAG_GRID_S, TABLE_LENGTH } from './capacityGrid.ts';
import type { FitData, FitOutcome } from './fit.ts';
import { bestPassage, profileOf } from './profile.ts';
import { laggedVoltage } from './rearSensor.ts';
import { gasVoltage } from './storageModel.ts';
import type { WindowInput } from './windowInput.ts';

/** Between two values further apart than this the slow wander outweighs the waves. */
const LONGEST_STEP_S: Seconds = 1.3;
const LEAST_PAIRS = 12;
/** One move counts no more than this. */
const MOST_MOVE_V = 0.6;
/** Shares of the fastest switching at this speed that the control may have. */
const PACES = [0.3, 0.55, 0.9];
const LEAST_MOVE_V = 0.012;
/** Uncertainty of a predicted mean square move, in its logarithm: height and pace of the swing are not known. */
const MODEL_SPREAD = 0.8;
const RUN_S = 30;
const SETTLED_S = 12;
const STEP_S = 0.04;

/**
 * The fit for instruments that are too slow to follow the front signal. What survives slow sampling is how far the rear
 * voltage moves from one value to the next: every value falls on another moment of the swing. For each capacity and
 * lag that move is predicted from a swing of the usual shape, of this window's height, at three paces, and set against
 * the recorded one. Delay cannot be told. Null where values lie more than 1.3 s apart or are fewer than a dozen.
 */
export function spreadFit(data: FitData, window: WindowInput, rear: Channel): FitOutcome {
  const moves = movesOf(data, rear);
  if (moves.count < LEAST_PAIRS)
    return {
      fit: null,
      missing: `Only ${moves.count} neighbouring values of the rear sensor lie within ${LONGEST_STEP_S} s of each other; ${LEAST_PAIRS} are needed.`,
    };
  const table = spreadTable(data, window, moves);
  const profile = profileOf(table);
  const facts = capacityFacts(data.capture, window, profile);
  const { lagS, delayS } = bestPassage(table, facts.gridIndex);
  return {
    fit: {
      basis: 'spread',
      ...facts.said,
      lagS,
      delayS,
      offsetV: 0,
      explained: 0,
      table,
      cycles: window.cycles,
      kind: 'steady',
      ghosts: null,
    },
    missing: null,
  };
}

interface Moves {
  readonly count: number;
  /** Half the mean square of a move, V²: the variance of values that have nothing to do with each other. */
  readonly half: number;
  readonly stepS: Seconds;
  readonly middleV: Volts;
}

function movesOf({ window: { startS, endS } }: FitData, rear: Channel): Moves {
  const { timesS, values } = seriesOf(rear, startS, endS);
  let squares = 0;
  const steps: number[] = [];
  for (let i = 1; i < values.length; i++) {
    const stepS = (timesS[i] ?? 0) - (timesS[i - 1] ?? 0);
    if (stepS > LONGEST_STEP_S) continue;
    const move = Math.min(MOST_MOVE_V, Math.abs((values[i] ?? 0) - (values[i - 1] ?? 0)));
    squares += move * move;
    steps.push(stepS);
  }
  const count = steps.length;
  return {
    count,
    half: count > 0 ? squares / count / 2 : 0,
    stepS: count > 0 ? median(steps) : 0,
    middleV: values.length > 0 ? median(values) : 0,
  };
}

function spreadTable(data: FitData, window: WindowInput, moves: Moves): Float64Array {
  const rpms = trackedBetween(engineTrack(data.capture), 'rpm', data.window.startS, data.window.endS);
  const fastest = fastestSwitching(rpms.length > 0 ? median(rpms) : null);
  const spread2 = MODEL_SPREAD ** 2 + 4 / moves.count;
  const seen = Math.log(moves.half + LEAST_MOVE_V ** 2);
  const likelihood = new Float64Array(TABLE_LENGTH / DELAY_GRID_S.length);
  for (const pace of PACES) {
    const input = steadyInput(usualSwing(pace * fastest, window.swing), window.airGS, moves.middleV);
    let at = 0;
    for (const { capacityG, rate } of CONVERTERS) {
      const gasV = gasVoltage(capacityG, rate, input, window.curve);
      for (const lagS of LAG_GRID_S) {
        const predicted = halfMove(laggedVoltage(gasV, lagS, STEP_S), moves.stepS);
        const off = seen - Math.log(predicted + LEAST_MOVE_V ** 2);
        likelihood[at] = (likelihood[at] ?? 0) + Math.exp((-0.5 * off * off) / spread2) / PACES.length;
        at++;
      }
    }
  }
  return overDelays(likelihood);
}

/** The same logarithm for every delay. */
function overDelays(likelihood: Float64Array): Float64Array {
  const logs = likelihood.map((value) => Math.log(Math.max(1e-12, value)));
  return Float64Array.from({ length: TABLE_LENGTH }, (_, i) => logs[Math.floor(i / DELAY_GRID_S.length)] ?? 0);
}

/** A swing with cut-off tops, as a relay control gives. */
function usualSwing(hz: number, half: number): Float64Array {
  return Float64Array.from({ length: Math.round(RUN_S / STEP_S) }, (_, k) =>
    Math.max(-half, Math.min(half, 1.6 * half * Math.sin(2 * Math.PI * hz * k * STEP_S))),
  );
}

function steadyInput(x: Float64Array, air: GramsPerSecond, rearV: Volts) {
  return {
    stepS: STEP_S,
    x,
    airGS: new Float64Array(x.length).fill(air),
    rearV: new Float64Array(x.length).fill(rearV),
  };
}

/** Half the mean square move between two moments `apartS` from each other, once the model has settled. */
function halfMove(volts: Float64Array, apartS: Seconds): number {
  const apart = Math.max(1, Math.round(apartS / STEP_S));
  let squares = 0;
  let count = 0;
  for (let k = Math.round(SETTLED_S / STEP_S) + apart; k < volts.length; k++) {
    const move = (volts[k] ?? 0) - (volts[k - apart] ?? 0);
    squares += move * move;
    count++;
  }
  return squares / Math.max(1, count) / 2;
}
