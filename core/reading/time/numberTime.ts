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
  const epoch = epochOf(sample);
  if (epoch !== null) return epoch;
  const named = unitOfTime(name, unit);
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

/** Seconds, milliseconds, microseconds or nanoseconds since 1970, for moments from 1995 to 2100; days of a spreadsheet. */
function epochOf(sample: readonly number[]): NumberTime | null {
  const first = sample.find((value) => Number.isFinite(value));
  const last = [...sample].reverse().find((value) => Number.isFinite(value));
  if (first === undefined || last === undefined) return null;
  for (const [over, words] of [
    [1, 'seconds since 1970'],
    [1e3, 'milliseconds since 1970'],
    [1e6, 'microseconds since 1970'],
    [1e9, 'nanoseconds since 1970'],
  ] as const) {
    if (first / over > 788918400 && last / over < 4102444800)
      return { times: 1, over, epoch: true, words, guess: null };
  }
  return null;
}

/** The median step tells: nobody records a row every 20 s, nor ten thousand rows a millisecond (common practice, no source). */
function bySize(sample: readonly number[]): NumberTime {
  const numbers = sample.filter((value) => Number.isFinite(value));
  const steps = numbers
    .slice(1)
    .map((value, i) => value - (numbers[i] ?? 0))
    .filter((step) => step > 0);
  steps.sort((a, b) => a - b);
  const step = steps[steps.length >> 1] ?? 0;
  const whole = numbers.every((value) => Number.isInteger(value));
  const seconds = { times: 1, over: 1, epoch: false, words: 'times in s', guess: null };
  const first = numbers[0] ?? 0;
  // A spreadsheet's days since 1899-12-30: 1995 to 2100, with steps under a minute.
  if (!whole && first > 34700 && first < 73050 && step > 0 && step < 7e-4) {
    return { times: 86400, over: 1, epoch: false, words: 'times in days', guess: 'numbers like a spreadsheet’s dates' };
  }
  if (step >= 20_000 || (!whole && step >= 5000))
    return { times: 1, over: 1e6, epoch: false, words: 'times in µs', guess: `steps of ${step} without a unit` };
  if ((step >= 5 && whole) || step >= 20)
    return { times: 1, over: 1000, epoch: false, words: 'times in ms', guess: `steps of ${step} without a unit` };
  return seconds;
}
