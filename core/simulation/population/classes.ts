import type { Grams } from '../../units/quantities.ts';
import type { Random } from '../random.ts';
import { BEYOND, type DrawMode, draw, type Range } from './ranges.ts';

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
  // Beyond its own range a capacity would belong to another class; only the open end above may be passed.
  const beyond = mode !== 'inside' && kind === 'fresh' && random.chance(0.5);
  const grams = beyond ? random.between(range.high, range.high * (1 + BEYOND)) : draw(range, random, 'inside');
  return (grams * bankLitres) / REFERENCE_LITRES;
}
