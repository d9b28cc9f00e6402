// Captures for tests, drawn instead of loaded: a few letters show the wave that a test speaks of.

import type { Capture } from '../../core/capture/capture.ts';
import type { Channel, ChannelFacts } from '../../core/capture/channel.ts';
import { type Bank, ROLE_FACTS, type Role } from '../../core/capture/roles.ts';
import type { Series } from '../../core/capture/series.ts';
import type { TimeBase } from '../../core/capture/timeBase.ts';

/** Levels of the letters of a drawn trace, in volts: lean, half way, rich. */
const LEVELS: Readonly<Record<string, number>> = { l: 0.1, L: 0.05, m: 0.45, r: 0.8, R: 0.9, '.': Number.NaN };

/**
 * A trace drawn in letters: one sample a letter, lowest to highest L l m r R, '.' a missing value, '0' to '9' tenths
 * of a volt. drawSeries('llrrllrr', 10) is a square wave of 2.5 Hz.
 */
export function drawSeries(drawing: string, rateHz: number): Series {
  const values = [...drawing.replace(/\s/g, '')].map((letter) => LEVELS[letter] ?? Number(letter) / 10);
  return seriesFrom(values, rateHz);
}

/** Even samples from a list of values; missing ones are left out. */
export function seriesFrom(values: readonly number[], rateHz: number, startS = 0): Series {
  const kept = values.map((value, i) => [startS + i / rateHz, value] as const).filter(([, v]) => Number.isFinite(v));
  return { timesS: Float64Array.from(kept, ([t]) => t), values: Float64Array.from(kept, ([, v]) => v) };
}

/** A channel of a capture under construction. */
export interface DrawnChannel {
  readonly role: Role;
  readonly bank?: Bank;
  readonly sensor?: number | null;
  readonly rateHz: number;
  /** Sample i lies at startS + i / rateHz. */
  readonly startS?: number;
  /** One value a sample, or the value at a moment in seconds for `seconds`. */
  readonly values: readonly number[] | Float64Array | ((timeS: number) => number);
  /** Needed where values are a function. */
  readonly seconds?: number;
  /** Moments of the samples where they are not even. */
  readonly timesS?: Float64Array;
}

/** A capture made of drawn channels. */
export function captureOf(channels: readonly DrawnChannel[]): Capture {
  const made = channels.map(makeChannel);
  const ends = made.map(({ time }) =>
    time.kind === 'regular' ? time.startS + (time.length - 1) * time.stepS : (time.timesS[time.timesS.length - 1] ?? 0),
  );
  return {
    name: 'drawn.csv',
    bytes: 0,
    durationS: Math.max(0, ...ends),
    rows: Math.max(0, ...made.map(({ values }) => values.length)),
    startClock: null,
    channels: made,
    warnings: [],
    layout: { id: 'drawn', words: 'Drawn by a test.', headerKey: '' },
  };
}

function makeChannel(drawn: DrawnChannel, index: number): Channel {
  const values = Float64Array.from(valuesOf(drawn));
  const stepS = 1 / drawn.rateHz;
  const time: TimeBase = drawn.timesS
    ? { kind: 'listed', timesS: drawn.timesS }
    : { kind: 'regular', startS: drawn.startS ?? 0, stepS, length: values.length };
  return {
    id: `c${index}`,
    name: `${drawn.role} ${drawn.bank ?? ''}`.trim(),
    role: drawn.role,
    bank: drawn.bank ?? null,
    sensor: drawn.sensor ?? null,
    unit: ROLE_FACTS[drawn.role].unit,
    fileUnit: null,
    time,
    values,
    facts: factsOf(values, drawn.rateHz),
  };
}

function valuesOf({ values, rateHz, seconds, startS = 0 }: DrawnChannel): ArrayLike<number> {
  if (typeof values !== 'function') return values;
  const count = Math.round((seconds ?? 0) * rateHz) + 1;
  return Float64Array.from({ length: count }, (_, i) => values(startS + i / rateHz));
}

/** Facts as reading would find them: renewals are changes of value, unless every sample changes anyway. */
export function factsOf(values: Float64Array, rateHz: number): ChannelFacts {
  const finite = values.filter(Number.isFinite);
  const sorted = Float64Array.from(new Set(finite)).sort();
  let resolution = Number.POSITIVE_INFINITY;
  for (let i = 1; i < sorted.length; i++) resolution = Math.min(resolution, (sorted[i] ?? 0) - (sorted[i - 1] ?? 0));
  const steps = sorted.length > 1 && Number.isFinite(resolution);
  return {
    finite: finite.length,
    min: finite.length > 0 ? Math.min(...[sorted[0] ?? 0]) : 0,
    max: sorted[sorted.length - 1] ?? 0,
    medianRateHz: rateHz,
    jitterS: 0,
    renewalRateHz: steps ? rateHz : 0,
    resolution: steps ? resolution : 0,
  };
}
