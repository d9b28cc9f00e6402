import { findChannel } from '../capture/capture.ts';
import type { Channel } from '../capture/channel.ts';
import { fastestSwitching } from '../signal/aliasing.ts';
import { median } from '../statistics/quantile.ts';
import { engineTrack, trackedBetween } from '../windows/engineTrack.ts';
import { capacityFacts } from './capacityFacts.ts';
import type { ConverterFit, FitData, FitOutcome } from './fit.ts';
import { ghostTraces } from './ghosts.ts';
import { missTable } from './missTable.ts';
import { bestPassage, logLikelihoods, profileOf } from './profile.ts';
import { spreadFit } from './spreadFit.ts';
import { type WindowInput, windowInput } from './windowInput.ts';

const LEAST_SAMPLES = 12;
const LEAST_CYCLES = 3;
/** Values a cycle below which a wave cannot be followed. */
const LEAST_PER_CYCLE = 2;

/**
 * Fits a converter with oxygen storage to what the two sensors of a bank showed in a window: the capacity, the rear
 * sensor's lag and the delay of the gas that make the recorded rear voltage most likely, given the recorded front one.
 *
 * The front signal becomes excess oxygen (frontOxygen.ts), is carried through cells that fill and empty
 * (storageModel.ts) and through the rear sensor's lag (rearSensor.ts), and is compared with the record on grids of
 * rate, capacity, lag and delay (missTable.ts); the likelihood of each capacity follows (profile.ts). In steady windows only
 * the waves are compared, not the slow wander; around a fuel cut the whole course is. Any sampling and irregular times
 * will do; where the front signal is too slow to be followed only the spread of the rear trace is used (spreadFit.ts).
 *
 * Windows of the kinds 'fuelCut' and 'snap' are fitted together with the seconds after them. Longer windows than 90 s
 * are fitted by their first 90 s. Null with a reason where a sensor is missing, or there is too little to fit.
 */
export function fitConverter(data: FitData): FitOutcome {
  const front = data.upstream?.channel ?? frontOf(data);
  const rear = data.downstream?.channel ?? null;
  if (!front) return refuse('The front oxygen sensor was not recorded.');
  if (!rear) return refuse('The rear oxygen sensor was not recorded.');
  const window = windowInput(data, front, rear);
  if (window.compared.steps.length < LEAST_SAMPLES)
    return refuse('Too few values of both sensors lie in this window to fit a model.');
  if (window.kind === 'airPull') return { fit: trackedFit(data, window), missing: null };
  if (tooSlow(data, front)) return spreadFit(data, window, rear);
  if (window.cycles < LEAST_CYCLES)
    return refuse(`The front signal swung ${window.cycles} times in this window; a fit needs ${LEAST_CYCLES}.`);
  return { fit: trackedFit(data, window), missing: null };
}

function frontOf({ capture, bank }: FitData): Channel | null {
  return findChannel(capture, 'upstreamO2', bank) ?? findChannel(capture, 'upstreamLambda', bank);
}

/** Whether the front signal may swing too fast for its instrument (sampling theorem, check 6.01). */
function tooSlow({ capture, window }: FitData, front: Channel): boolean {
  const { renewalRateHz, medianRateHz } = front.facts;
  const rate = renewalRateHz > 0 ? renewalRateHz : medianRateHz;
  const rpms = trackedBetween(engineTrack(capture), 'rpm', window.startS, window.endS);
  return rate < LEAST_PER_CYCLE * fastestSwitching(rpms.length > 0 ? median(rpms) : null);
}

function trackedFit(data: FitData, window: WindowInput): ConverterFit {
  const { volts } = window.compared;
  const mean = volts.reduce((sum, value) => sum + value, 0) / volts.length;
  const table = logLikelihoods(missTable(window), { ...window, values: volts.length });
  const profile = profileOf(table);
  const facts = capacityFacts(data.capture, window, profile);
  const passage = bestPassage(table, facts.gridIndex);
  const ghosts = ghostTraces(window, facts, passage);
  const shown = ghosts.atCompared;
  const offsetV = mean - shown.reduce((sum, value) => sum + value, 0) / Math.max(1, shown.length);
  return {
    basis: 'tracked',
    ...facts.said,
    lagS: passage.lagS,
    delayS: passage.delayS,
    offsetV,
    explained: explained(volts, shown, mean, offsetV),
    table,
    cycles: window.cycles,
    kind: window.kind,
    ghosts: ghosts.traces,
  };
}

function explained(volts: Float64Array, shown: Float64Array, mean: number, offsetV: number): number {
  let left = 0;
  let all = 0;
  volts.forEach((value, i) => {
    left += (value - (shown[i] ?? 0) - offsetV) ** 2;
    all += (value - mean) ** 2;
  });
  return all > 0 ? 1 - left / all : 0;
}

function refuse(missing: string): FitOutcome {
  return { fit: null, missing };
}
