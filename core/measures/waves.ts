import { remember } from '../signal/remember.ts';
import { thinned } from '../signal/thinned.ts';
import { type SegmentWaves, segmentWaves, type Transfer, transferOver } from '../signal/transferAt.ts';
import { drawBlocks, type Resamples } from '../statistics/bootstrap.ts';
import { seededUniform } from '../statistics/seededUniform.ts';
import type { Hertz, Share } from '../units/quantities.ts';
import { likelySwitching } from './likelySwitching.ts';
import type { WindowData } from './measure.ts';
import { bothVoltages, renewalRate } from './sensors.ts';

/** How the rear sensor answers the front one at the switching frequency, segment by segment. */
export interface Waves {
  readonly hz: Hertz;
  readonly segments: readonly SegmentWaves[];
  readonly transfer: Transfer;
  readonly resamples: Resamples;
  /** Coherence that chance alone reaches in one of a hundred windows with this many segments. */
  readonly chance: Share;
}

/** A segment holds three cycles, and values enough that four unknowns do not fit them by themselves. */
const CYCLES = 3;
const LEAST_VALUES = 10;
/** More values a cycle than this make a wave no clearer. */
const VALUES_A_CYCLE = 40;
const FEWEST = 6;
const MOST = 40;
const DRAWS = 200;
const SEED = 2;

/** The waves of both sensors at the switching frequency, or the sentence that says why they cannot be had. */
export const wavesOf = remember((data: WindowData): Waves | string => {
  const both = bothVoltages(data);
  if (both.why !== null) return both.why;
  const hz = likelySwitching(data);
  const rate = Math.min(renewalRate(both.front.channel), renewalRate(both.rear.channel));
  if (rate < 2 * hz) return `The sensors bring fewer than two values a cycle of ${hz.toFixed(1)} Hz.`;
  const { startS, endS } = data.window;
  const count = Math.min(MOST, Math.floor((endS - startS) / Math.max(CYCLES / hz, LEAST_VALUES / rate)));
  if (count < FEWEST) return 'The window holds too few cycles to compare the sensors wave by wave.';
  const stepS = (endS - startS) / count;
  const stretches = Array.from({ length: count }, (_, i) => ({
    startS: startS + i * stepS,
    endS: startS + (i + 1) * stepS,
  }));
  const mostHz = VALUES_A_CYCLE * hz;
  const segments = segmentWaves(thinned(both.front.series, mostHz), thinned(both.rear.series, mostHz), hz, stretches);
  const transfer = transferOver(segments, hz);
  if (!transfer || segments.length < FEWEST) return 'Too few values to compare the sensors wave by wave.';
  return {
    hz,
    segments,
    transfer,
    resamples: drawBlocks(segments.length, DRAWS, seededUniform(SEED)),
    chance: 1 - 0.01 ** (1 / (segments.length - 1)),
  };
});
