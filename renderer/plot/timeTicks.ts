// Where the ticks of a time axis stand. The step depends only on how long the visible stretch is, so that it never
// changes while panning.

import type { Stretch } from '../../core/windows/window.ts';

const SECONDS = [15, 30];
const MINUTES = [60, 120, 300, 600, 900, 1800];
const HOURS = [3600, 7200, 14_400, 21_600, 43_200, 86_400];

/** Steps a person counts in: 1, 2, 5 by powers of ten up to 10 s, then 15 and 30 s, minutes, hours. */
export const TIME_STEPS: readonly number[] = [
  ...[-6, -5, -4, -3, -2, -1].flatMap((power) => [1, 2, 5].map((digit) => Number(`${digit}e${power}`))),
  1,
  2,
  5,
  10,
  ...SECONDS,
  ...MINUTES,
  ...HOURS,
];

/** Most ticks on one axis; with these steps there are at least four where the labels leave room. */
const MOST_TICKS = 10;

/** The step for a stretch of `spanS` over `width` px when every label wants `labelWidth` px. */
export function timeStep(spanS: number, width: number, labelWidth: number): number {
  const least = Math.max(spanS / MOST_TICKS, (spanS / width) * labelWidth);
  return TIME_STEPS.find((step) => step >= least * (1 - 1e-9)) ?? Math.ceil(least / 86_400) * 86_400;
}

/** Fine divisions between two ticks: what people count between the labels of `step`. */
export function fineTimeStep(step: number): number {
  if (step < 15) return leadingDigit(step) === 2 ? step / 4 : step / 5;
  const fine: Readonly<Record<number, number>> = { 15: 5, 30: 10, 60: 10, 120: 30, 300: 60, 600: 120, 900: 300 };
  return fine[step] ?? (step <= 3600 ? step / 6 : step / 4);
}

/** Multiples of `step` from the start to the end of the stretch, both included. */
export function timeTicks(stretch: Stretch, step: number): number[] {
  const first = Math.ceil(stretch.startS / step - 1e-9);
  const last = Math.floor(stretch.endS / step + 1e-9);
  const ticks: number[] = [];
  // Dividing by the whole number of steps in a second keeps 0.3 from becoming 0.30000000000000004.
  const perSecond = step < 1 ? Math.round(1 / step) : null;
  // `+ 0` turns a negative zero into a plain one.
  for (let i = first; i <= last; i++) ticks.push((perSecond === null ? i * step : i / perSecond) + 0);
  return ticks;
}

function leadingDigit(value: number): number {
  return Math.round(value / 10 ** Math.floor(Math.log10(value) + 1e-9));
}
