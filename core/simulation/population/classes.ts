import type { Grams } from '../../units/quantities.ts';
import type { Random } from '../random.ts';
import { type DrawMode, draw, type Range } from './ranges.ts';

/**
 * Classes by storage capacity of the hot converter ahead of the rear sensor, for a two-litre engine and scaled with the
 * engine of the bank. Orders of magnitude from memory, no readable source: so parameters. Between failed and aged lies a
 * gray zone where 'weak' is the right word and either neighbour is no error.
 */
export const CLASSES = ['fresh', 'aged', 'gray', 'failed'] as const;
export type ConverterClass = (typeof CLASSES)[number];

export const CAPACITY_G: Readonly<Record<ConverterClass, Range>> = {
  fresh: { low: 0.9, high: 2.2, log: true },
  aged: { low: 0.28, high: 0.9, log: true },
  gray: { low: 0.1, high: 0.28, log: true },
  failed: { low: 0.006, high: 0.1, log: true },
};

/** Litres of engine for which the capacities above are said. */
export const REFERENCE_LITRES = 2;

/** Capacity of a converter of this class behind a bank of `bankLitres`. */
export function drawCapacity(kind: ConverterClass, bankLitres: number, random: Random, mode: DrawMode): Grams {
  const range = CAPACITY_G[kind];
  // Outside its own range a capacity would belong to another class; only the two open ends may be passed.
  const open = kind === 'fresh' ? { ...range, low: range.high / 1.3 } : range;
  const grams = mode === 'outside' && kind === 'fresh' ? draw(open, random, 'outside') : draw(range, random, 'inside');
  return (grams * bankLitres) / REFERENCE_LITRES;
}
