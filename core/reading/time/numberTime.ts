import { findUnit } from '../../units/findUnit.ts';
import { plainWords } from '../naming/concepts.ts';

/** What the numbers of a time column count. */
export interface NumberTime {
  readonly times: number;
  readonly over: number;
  readonly epoch: boolean;
  readonly words: string;
  readonly guess: string | null;
}

/**
 * Unit of a column of numeric times: what its heading says, else what the size of the numbers gives away. `sample` holds
 * the first numbers in the order of the file; it may hold NaN.
 */
export function numberTimeOf(name: string, unit: string | null, sample: readonly number[]): NumberTime {
  const named = unitOfTime(name, unit);
  const epoch = epochOf(sample, named);
  if (epoch !== null) return epoch;
  const ticks = ticksOf(sample);
  if (ticks !== null) return ticks;
  if (named !== null) return { times: named.times, over: named.over, epoch: false, words: named.words, guess: null };
  return bySize(sample);
}

function unitOfTime(name: string, unit: string | null): { times: number; over: number; words: string } | null {
  const row = unit === null ? null : findUnit(unit);
  if (row?.quantity === 'time') return { times: row.times, over: row.over, words: `times in ${row.symbol}` };
  const words = plainWords(name);
  if (
    /(?:^| )(?:ms|msec|msecs|millis|millisec\w*|millisekunden|milisegundos)(?: |$)|(?:time|zeit|temps|tiempo)ms$/.test(
      words,
    )
  )
    return { times: 1, over: 1000, words: 'times in ms' };
  if (/(?:^| )(?:us|usec|micros|microsec\w*|mikrosekunden)(?: |$)/.test(words))
    return { times: 1, over: 1e6, words: 'times in µs' };
  if (/(?:^| )(?:s|sec|secs|seconds?|sek|sekunden|secondes?|segundos?|seg)(?: |$)/.test(words))
    return { times: 1, over: 1, words: 'times in s' };
  if (/(?:^| )(?:min|minutes?|minuten|minutos)(?: |$)/.test(words))
    return { times: 60, over: 1, words: 'times in min' };
  return null;
}

/** Moments from 1995 to 2060, s since 1970; later ones would be those of counts that began in 1904. */
export const FIRST_MOMENT_S = 788_918_400;
const LAST_MOMENT_S = 2_840_140_800;
/** Nobody records a row an hour (common practice, no source): such steps are those of a count in another unit. */
const LONGEST_STEP_S = 3600;

/**
 * Seconds, milliseconds, microseconds or nanoseconds since 1970, where the numbers and their steps allow it. A unit that
 * the heading names is believed unless its own reading lies beyond all moments: 900,000,000 µs are a quarter of an hour.
 */
function epochOf(sample: readonly number[], named: { times: number; over: number } | null): NumberTime | null {
  const first = sample.find((value) => Number.isFinite(value));
  const last = [...sample].reverse().find((value) => Number.isFinite(value));
  if (first === undefined || last === undefined) return null;
  const step = medianStep(sample);
  for (const [over, words] of [
    [1, 'seconds since 1970'],
    [1e3, 'milliseconds since 1970'],
    [1e6, 'microseconds since 1970'],
    [1e9, 'nanoseconds since 1970'],
  ] as const) {
    const moments = first / over > FIRST_MOMENT_S && last / over < LAST_MOMENT_S;
    if (!moments || step / over > LONGEST_STEP_S) continue;
    const other = named !== null && named.over / named.times !== over;
    if (other && (first * named.times) / named.over < LAST_MOMENT_S) continue;
    return { times: 1, over, epoch: true, words, guess: null };
  }
  return null;
}

/** Moments in counts of 100 ns, s from where they begin to 1970: the years 1601 and 1 of the Gregorian calendar. */
const TICK_COUNTS = [
  [11_644_473_600, 'counts of 100 ns since 1601'],
  [62_135_596_800, 'counts of 100 ns since the year 1'],
] as const;

/** Counts of 100 ns, as operating systems keep moments, where all numbers are of our time. */
function ticksOf(sample: readonly number[]): NumberTime | null {
  const moments = sample.filter((value) => Number.isFinite(value));
  for (const [beforeS, words] of TICK_COUNTS) {
    const ours = (value: number): boolean =>
      value / 1e7 - beforeS > FIRST_MOMENT_S && value / 1e7 - beforeS < LAST_MOMENT_S;
    if (moments.length > 0 && moments.every(ours))
      return { times: 1, over: 1e7, epoch: false, words, guess: 'numbers of that size' };
  }
  return null;
}

function medianStep(sample: readonly number[]): number {
  const numbers = sample.filter((value) => Number.isFinite(value));
  const steps = numbers
    .slice(1)
    .map((value, i) => value - (numbers[i] ?? 0))
    .filter((step) => step > 0);
  steps.sort((a, b) => a - b);
  return steps[steps.length >> 1] ?? 0;
}

/**
 * The median step tells: nobody records a row only every 5 s in whole seconds, every 20 s otherwise, so such numbers count
 * milliseconds; nor one every 5 or 10 s in these, so such numbers count microseconds (common practice, no source).
 */
function bySize(sample: readonly number[]): NumberTime {
  const numbers = sample.filter((value) => Number.isFinite(value));
  const step = medianStep(sample);
  const whole = numbers.every((value) => Number.isInteger(value));
  const seconds = { times: 1, over: 1, epoch: false, words: 'times in s', guess: null };
  if (isShareOfDay(sample)) {
    return {
      times: 86400,
      over: 1,
      epoch: false,
      words: 'times in days',
      guess: 'numbers like clock times as shares of a day',
    };
  }
  if (countsDays(sample)) {
    return { times: 86400, over: 1, epoch: false, words: 'times in days', guess: 'numbers like dates counted in days' };
  }
  if (step >= 10_000 || (!whole && step >= 5000))
    return { times: 1, over: 1e6, epoch: false, words: 'times in µs', guess: `steps of ${step} without a unit` };
  if ((step >= 5 && whole) || step >= 20)
    return { times: 1, over: 1000, epoch: false, words: 'times in ms', guess: `steps of ${step} without a unit` };
  return seconds;
}

/** Days from 1995 to 2100 as spreadsheets (since 1899-12-30), numerical programs (since the year 0) and astronomers count. */
const DAY_COUNTS = [
  [34_700, 73_050],
  [728_660, 767_010],
  [2_449_718, 2_488_070],
] as const;

/** Whether the numbers are days with fractions of them, in steps under a minute. */
export function countsDays(sample: readonly number[]): boolean {
  const first = sample.find((value) => Number.isFinite(value)) ?? 0;
  const step = medianStep(sample);
  const whole = sample.every((value) => Number.isNaN(value) || Number.isInteger(value));
  return !whole && step > 0 && step < 7e-4 && DAY_COUNTS.some(([from, to]) => first > from && first < to);
}

/** Nobody drives at so small a share of a day, 01:00, but a recorder of microseconds counts from about 0. */
const FIRST_SHARE = 1 / 24;

/** Clock times as spreadsheets keep them, 0.5 for noon: odd steps that are round ones in seconds. */
function isShareOfDay(sample: readonly number[]): boolean {
  const step = medianStep(sample);
  const finite = sample.filter((value) => Number.isFinite(value));
  if (!(step > 0 && step < 7e-4) || !finite.every((value) => value >= FIRST_SHARE && value < 2)) return false;
  return isRound(step * 86400, 2, 0.01) && !isRound(step, 3, 1e-4);
}

/** Whether a value is a number of so many digits, but for a share of itself. */
function isRound(value: number, digits: number, share: number): boolean {
  return Math.abs(value - Number(value.toPrecision(digits))) < share * value;
}
