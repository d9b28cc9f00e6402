import numbers from './calibration.json';

/**
 * One line of the additive model. A reason's weight is a straight line in its value, cut off at both ends of what the
 * calibration saw: slope * (value cut to low..high - middle), a logarithm of odds, positive for notStoring. Slopes are
 * never negative: more of what speaks against a converter never speaks for it. No line weighs more than `mostWeight`.
 */
export interface Line {
  readonly middle: number;
  readonly slope: number;
  readonly low: number;
  readonly high: number;
}

/** Every number of the model; calibration.json says how each came about, and `npm run calibrate` makes it again. */
export const CALIBRATION: {
  readonly decided: typeof numbers.decided;
  readonly lines: Readonly<Record<string, Line>>;
} = numbers;

/** Weight of a reason's value, a logarithm of odds; 0 for a reason the calibration does not know. */
export function weightOf(reasonId: string, value: number): number {
  const line = CALIBRATION.lines[reasonId];
  if (!line) return 0;
  const { mostWeight } = CALIBRATION.decided;
  const weight = line.slope * (Math.min(line.high, Math.max(line.low, value)) - line.middle);
  return Math.min(mostWeight, Math.max(-mostWeight, weight));
}
