// Numbers that stand for "no value". Left among the values they would be peaks of a sensor that never were.

import type { Range } from '../capture/channelFacts.ts';
import type { CaptureWarning } from '../capture/warnings.ts';
import type { RawChannel } from './rawChannel.ts';
import { shownText } from './shownText.ts';

/** What instruments and databases write where they have no value: rows of nines, and the ends of 16 and 32 bits. */
const ERROR_NUMBERS: ReadonlySet<number> = new Set([
  ...[-999, -9999, -99999, 9999, 99999, 65535, 65534, 32767, -32768, -32767],
  ...[4294967295, 2147483647, -2147483648],
]);
/** Such a number is believed to be a value unless it lies so many times the range of all others away from them. */
const FAR = 4;
/** Of fewer other values nothing can be said. */
const LEAST_OTHERS = 10;

/**
 * Makes NaN, in place, of numbers of the list that lie far outside all other values of a channel, and tells of each. A
 * channel without one comes back as it is, after a look at its range only. Common practice, no source.
 */
export function blankErrorNumbers(channel: RawChannel): { channel: RawChannel; warnings: CaptureWarning[] } {
  const warnings: CaptureWarning[] = [];
  let range = channel.range ?? rangeOf(channel.values, Number.NaN);
  for (let found = errorAt(range); found !== null; found = errorAt(range)) {
    const others = rangeOf(channel.values, found);
    if (!isFar(found, others)) break;
    const count = range.finite - others.finite;
    for (let i = 0; i < channel.values.length; i++) if (channel.values[i] === found) channel.values[i] = Number.NaN;
    warnings.push({
      id: 'unreadableCells',
      detail: words(channel.name, found, count),
      row: null,
      count,
      repaired: false,
    });
    range = others;
  }
  if (warnings.length === 0) return { channel, warnings };
  const { blocks: _, ...rest } = channel;
  return { channel: { ...rest, range }, warnings };
}

/** An end of the range that is one of the numbers, or null. */
function errorAt({ finite, min, max }: Range): number | null {
  if (finite === 0) return null;
  return ERROR_NUMBERS.has(max) ? max : ERROR_NUMBERS.has(min) ? min : null;
}

function isFar(number: number, { finite, min, max }: Range): boolean {
  if (finite < LEAST_OTHERS || min === max) return false;
  return Math.min(Math.abs(number - min), Math.abs(number - max)) > FAR * (max - min);
}

function rangeOf(values: Float32Array | Float64Array, without: number): Range {
  let finite = 0;
  let min = Number.POSITIVE_INFINITY;
  let max = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < values.length; i++) {
    const value = values[i] ?? Number.NaN;
    if (Number.isNaN(value) || value === without) continue;
    finite++;
    if (value < min) min = value;
    if (value > max) max = value;
  }
  return { finite, min, max };
}

function words(name: string, number: number, count: number): string {
  const cells = count === 1 ? 'one cell says' : `${count} cells say`;
  return `“${shownText(name, 60)}”: ${cells} ${number}, far from all other values, as instruments write where they have none; left blank.`;
}
