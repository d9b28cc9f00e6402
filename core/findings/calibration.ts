// The numbers of the additive model. A weight is a straight line in the measure, cut off at both ends:
// slope * (value - middle), never beyond ±most. Set by hand from the printed limits of checks 3.01 to 3.03 until the
// simulated population replaces them.

export interface Line {
  readonly middle: number;
  readonly slope: number;
  readonly most: number;
}

export const WEIGHTS = {
  switchRatio: { middle: 0.1, slope: 3, most: 1.2 },
  fastSwingRatio: { middle: 0.62, slope: 6, most: 2 },
  pathRatio: { middle: 0.62, slope: 6, most: 2 },
  rearFastSwing: { middle: 0.28, slope: 12, most: 3 },
  /** A catalyst code among the codes found. */
  catalystCode: 0.4,
} as const;

/** Where there is no rear sensor: how much more temperatures may weigh, and from which probability a finding is given. */
export const TEMPERATURE_ALONE = { times: 1.7, findingFrom: 0.7 } as const;

/** A finding is given beyond these probabilities; the line against the converter is the harder one to cross. */
export const NOT_STORING_FROM = 0.9;
export const STORING_UP_TO = 0.12;

/** No probability is shown closer to certainty than this. */
export const LEAST_DOUBT = 0.01;

/** Weight of a value on a line, a logarithm of odds within ±most. */
export function onLine({ middle, slope, most }: Line, value: number): number {
  return Math.min(most, Math.max(-most, slope * (value - middle)));
}
