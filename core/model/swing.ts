import { findChannel } from '../capture/capture.ts';
import type { Channel } from '../capture/channel.ts';
import { seriesOf, valuesWhere } from '../capture/series.ts';
import { remember } from '../signal/remember.ts';
import { median, quantilesOf } from '../statistics/quantile.ts';
import type { Volts } from '../units/quantities.ts';
import type { ConverterFit, FitData } from './fit.ts';
import { excessOxygen } from './oxygenFlow.ts';

/** Height of the mixture's swing ahead of the converter, and where it was taken from. */
export interface Swing {
  /** Half height, in excess oxygen. */
  readonly half: number;
  readonly from: ConverterFit['swingFrom'];
}

/** Half height taken where nothing tells it: 2.5 % of lambda, the middle of check 3.35. */
const USUAL_HALF = 0.025;
const LEAST_TRIMS = 20;

/**
 * Half height of the swing in a window. A wideband front sensor shows it. Behind a switching one the short-term trim
 * does: in closed loop the mixture swings as the trim does (half its 10 to 90 % range). Else the usual height is taken.
 */
export function swingOf(data: FitData): Swing {
  const { upstream, window, bank } = data;
  if (upstream?.channel.role === 'upstreamLambda') {
    const half = halfRange(upstream.series.values.map(excessOxygen));
    return { half: Math.max(0.002, half), from: 'lambda' };
  }
  const trims = findChannel(data.capture, 'stft', bank) ?? findChannel(data.capture, 'stft', null);
  if (trims) {
    const { values } = seriesOf(trims, window.startS, window.endS);
    const half = halfRange(values) / 100;
    if (values.length >= LEAST_TRIMS && half >= 0.004 && half < 0.12) return { half, from: 'trims' };
  }
  return { half: USUAL_HALF, from: 'usual' };
}

function halfRange(values: Float64Array): number {
  const [low = 0, high = 0] = values.length > 0 ? quantilesOf(values, [0.1, 0.9]) : [];
  return (high - low) / 2;
}

/** Where a switching sensor rests while the control swings: lean and rich plateau. */
export interface Plateaus {
  readonly leanV: Volts;
  readonly richV: Volts;
}

const USUAL_PLATEAUS: Plateaus = { leanV: 0.1, richV: 0.82 };
const LEAST_ON_A_SIDE = 10;

/** Plateaus of a sensor over a whole capture: the medians of what lies clearly on either side of the switch point. */
export const plateausOf = remember((sensor: Channel): Plateaus => {
  const lean = valuesWhere(sensor, (value) => value < 0.35);
  const rich = valuesWhere(sensor, (value) => value > 0.55);
  return {
    leanV: lean.length >= LEAST_ON_A_SIDE ? median(lean) : USUAL_PLATEAUS.leanV,
    richV: rich.length >= LEAST_ON_A_SIDE ? median(rich) : USUAL_PLATEAUS.richV,
  };
});
