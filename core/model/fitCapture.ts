import { type Capture, findChannel } from '../capture/capture.ts';
import type { Channel } from '../capture/channel.ts';
import type { Bank } from '../capture/roles.ts';
import { seriesOf } from '../capture/series.ts';
import type { CaptureWindow } from '../windows/window.ts';
import { airPulls } from './airPulls.ts';
import { capacityFacts } from './capacityFacts.ts';
import type { CaptureFit, ConverterFit, FitData } from './fit.ts';
import { fitConverter } from './fitConverter.ts';
import { addTables, profileOf } from './profile.ts';

/** More of either add little, as they miss in the same way. */
const MOST_STEADY = 3;
const MOST_PULLS = 4;

/**
 * Fits the converter of a bank to a capture: the longest three of the given steady windows (hold, cruise, mixed) and the
 * longest four fuel cuts that the front sensor shows. They share the rear sensor, so their likelihoods are added before
 * lag and delay are summed over. Null where nothing could be fitted.
 */
export function fitCapture(capture: Capture, bank: Bank, windows: readonly CaptureWindow[]): CaptureFit | null {
  const front = findChannel(capture, 'upstreamO2', bank) ?? findChannel(capture, 'upstreamLambda', bank);
  if (!front) return null;
  const steady = longest(windows.filter(({ kind }) => kind === 'hold' || kind === 'cruise' || kind === 'mixed'));
  const cuts = longest(
    airPulls(front).map((pull): CaptureWindow => ({ ...pull, bank, kind: 'fuelCut', origin: 'suggested' })),
  );
  const fits = [...steady.slice(0, MOST_STEADY), ...cuts.slice(0, MOST_PULLS)]
    .map((window) => fitConverter(cut(capture, bank, front, window)).fit)
    .filter((fit) => fit !== null);
  return combineFits(capture, fits);
}

/**
 * What several fits of one capture and bank say together; null for none. Steady windows whose waves were followed miss in
 * the same way, so all of them together count as one; what else was fitted counts each by itself.
 */
export function combineFits(capture: Capture, fits: readonly ConverterFit[]): CaptureFit | null {
  const first = fits[0];
  if (!first) return null;
  const tracked = fits.filter(({ kind, basis }) => kind === 'steady' && basis === 'tracked').length;
  const parts = fits.map(({ table, kind, basis }) => ({
    table,
    weight: kind === 'steady' && basis === 'tracked' ? 1 / tracked : 1,
  }));
  const profile = profileOf(addTables(parts));
  const { said } = capacityFacts(capture, first, profile);
  const pulls = fits.filter(({ kind }) => kind === 'airPull').length;
  return { ...said, steady: fits.length - pulls, airPulls: pulls };
}

function longest(windows: readonly CaptureWindow[]): CaptureWindow[] {
  return [...windows].sort((a, b) => b.endS - b.startS - (a.endS - a.startS) || a.startS - b.startS);
}

function cut(capture: Capture, bank: Bank, front: Channel, window: CaptureWindow): FitData {
  const rear = findChannel(capture, 'downstreamO2', bank, 2) ?? findChannel(capture, 'downstreamO2', bank);
  const both = [front, rear].map((channel) =>
    channel ? { channel, series: seriesOf(channel, window.startS, window.endS) } : null,
  );
  return { capture, window, bank, upstream: both[0] ?? null, downstream: both[1] ?? null };
}
