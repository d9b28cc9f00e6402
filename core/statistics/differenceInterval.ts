import type { Interval } from './exactIntervals.ts';

/** A value with an interval that holds it, of any confidence: the difference then has that confidence. */
export interface Bounded {
  readonly value: number;
  readonly interval: Interval;
}

/**
 * Interval for `second` less `first`, two independent values of one unit, from their own intervals: each limit lies from
 * the difference by the root of the squared distances on the sides that matter. Newcombe's square-and-add limits
 * (Statistics in Medicine 17, 1998, 873-890, method 10), which Zou and Donner (the same 27, 2008, 1693-1702) show to hold
 * for any two values; both from memory. Keeps lopsided intervals lopsided.
 */
export function differenceInterval(first: Bounded, second: Bounded): Interval {
  const difference = second.value - first.value;
  const [firstLow, firstHigh] = first.interval;
  const [secondLow, secondHigh] = second.interval;
  return [
    difference - Math.hypot(second.value - secondLow, firstHigh - first.value),
    difference + Math.hypot(secondHigh - second.value, first.value - firstLow),
  ];
}
