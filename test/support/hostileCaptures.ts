// Captures that a stranger's instrument may write and that nobody should score: whatever scores them must say so calmly.

import type { Capture } from '../../core/capture/capture.ts';
import { captureOf, type DrawnChannel } from './drawTrace.ts';

const front = (values: DrawnChannel['values'], rateHz = 10): DrawnChannel => ({
  role: 'upstreamO2',
  bank: 1,
  sensor: 1,
  rateHz,
  values,
  seconds: 60,
});
const rear = (values: DrawnChannel['values'], rateHz = 10): DrawnChannel => ({
  role: 'downstreamO2',
  bank: 1,
  sensor: 2,
  rateHz,
  values,
  seconds: 60,
});
const square = (t: number) => (Math.sin(2 * Math.PI * 1.1 * t) > 0 ? 0.85 : 0.1);
const mostlyMissing = (t: number) => (Math.floor(t * 10) % 40 === 0 ? 0.4 : Number.NaN);

/** Name and capture, every one 60 s or less. */
export const HOSTILE_CAPTURES: readonly (readonly [string, Capture])[] = [
  ['no channel at all', captureOf([])],
  ['channels without a sample', captureOf([front([]), rear([])])],
  ['one sample each', captureOf([front([0.45]), rear([0.6])])],
  ['two samples each', captureOf([front([0.1, 0.9]), rear([0.6, 0.61])])],
  ['nothing but missing values', captureOf([front(() => Number.NaN), rear(() => Number.NaN)])],
  ['mostly missing values', captureOf([front(mostlyMissing), rear(mostlyMissing)])],
  ['a constant front sensor', captureOf([front(() => 0.45), rear((t) => 0.6 + 0.1 * Math.sin(t))])],
  ['a constant rear sensor', captureOf([front(square), rear(() => 0.62)])],
  ['both constant at the same value', captureOf([front(() => 0.45), rear(() => 0.45)])],
  ['only a front sensor', captureOf([front(square)])],
  ['only a rear sensor', captureOf([rear(square)])],
  ['no oxygen sensor', captureOf([{ role: 'rpm', rateHz: 2, seconds: 60, values: () => 2200 }])],
  [
    'a wideband front sensor',
    captureOf([
      { role: 'upstreamLambda', bank: 1, rateHz: 10, seconds: 60, values: (t) => 1 + 0.02 * Math.sin(6 * t) },
      rear(() => 0.65),
    ]),
  ],
  ['rates a thousandfold apart', captureOf([front(square, 1000), rear(square, 0.9)])],
  ['one value in three seconds', captureOf([front(square, 0.3), rear(square, 0.3)])],
  ['values far outside any sensor', captureOf([front((t) => 1e6 * Math.sin(t)), rear((t) => -1e6 * Math.sin(t))])],
  [
    'values as small as noise',
    captureOf([front((t) => 1e-9 * Math.sin(99 * t)), rear((t) => 1e-9 * Math.cos(97 * t))]),
  ],
  [
    'sensors without a bank',
    captureOf([
      { ...front(square), bank: null },
      { ...rear(square), bank: null },
    ]),
  ],
  [
    'bank 2 alone',
    captureOf([
      { ...front(square), bank: 2 },
      { ...rear(square), bank: 2 },
    ]),
  ],
];
