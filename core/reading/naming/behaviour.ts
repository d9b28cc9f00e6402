import type { Role } from '../../capture/roles.ts';

/**
 * What a channel's values look like, in the file's own unit unless it says otherwise. All finite; zeros for no samples.
 * `min` and `max` leave the outermost hundredth on either side out: one spoiled row must not change what a channel is.
 */
export interface Behaviour {
  readonly finite: number;
  readonly min: number;
  readonly max: number;
  /** Median of up to a few thousand samples spread over the capture. */
  readonly median: number;
  /** How many of these differ from each other, at most a few thousand. */
  readonly distinct: number;
}

/** Ranges in which the values of an oxygen sensor lie. Common practice, no source: zirconia cells give 0 to about 1.1 V. */
export function looksLikeSensorVolts(b: Behaviour): boolean {
  return b.finite > 0 && b.min >= -0.6 && b.max <= 1.7 && b.max > 0.02;
}

/** Air ratio near one: wideband instruments report about 0.6 to 2. */
export function looksLikeLambda(b: Behaviour): boolean {
  return b.finite > 0 && b.min > 0.4 && b.max < 17 && b.median > 0.65 && b.median < 1.9;
}

/** Air-fuel ratio of a petrol engine: about 9 to 20, up to the instrument's end with fuel cut. */
export function looksLikeAirFuelRatio(b: Behaviour): boolean {
  return b.finite > 0 && b.min > 5 && b.median > 9 && b.median < 25;
}

/** Sensor voltage given as millivolts: a sensor that never leaves the lowest tenth may be anything else. */
export function looksLikeMillivolts(b: Behaviour): boolean {
  return b.finite > 0 && b.min >= -600 && b.max <= 1700 && b.max > 100;
}

/** So low for millivolts of a sensor that swings that they may be counts of one byte, of 5 mV each. */
export function mayBeCounts(b: Behaviour): boolean {
  return b.min >= 0 && b.max <= 255;
}

/** SAE J1979, PID 03 (check 1.03), knows five states and none; some instruments write both systems in one number. */
const MOST_STATES = 12;

/**
 * Why the values of a channel contradict its role, as a sentence without the channel's name, or null where they do not.
 * `b` is in the role's own unit. The limits are far outside what an engine does (common practice, no source).
 */
export function contradiction(role: Role, b: Behaviour): string | null {
  if (b.finite === 0) return null;
  const range = `values from ${short(b.min)} to ${short(b.max)}`;
  switch (role) {
    case 'coolant':
    case 'intakeAir':
      if (b.distinct > 3 && b.min > -0.7 && b.max < 1.8)
        return `${range} look like a sensor's voltage, not like a temperature`;
      return b.median < -60 || b.median > 160 ? `${range} are no such temperature in °C` : null;
    case 'catalystTemp':
      return b.median < -60 || b.median > 1400 ? `${range} are no converter temperature in °C` : null;
    case 'rpm':
      if (b.min < -1 || b.max > 20000) return `${range} are no engine speed in 1/min`;
      return b.max > 0 && b.max < 20 ? `${range} are too low for an engine speed in 1/min` : null;
    case 'upstreamO2':
    case 'downstreamO2':
      return looksLikeSensorVolts(b) || (b.min >= -0.6 && b.max <= 1.7)
        ? null
        : `${range} are no oxygen sensor's voltage`;
    case 'upstreamLambda':
      return b.median < 0.4 || b.median > 3 ? `${range} are no air ratio` : null;
    case 'stft':
    case 'ltft':
      return b.median < -60 || b.median > 60 || b.max > 130 || b.min < -130 ? `${range} are no fuel trim in %` : null;
    case 'speed':
      return b.min < -5 || b.max > 400 ? `${range} are no vehicle speed in km/h` : null;
    case 'load':
      return b.min < -5 || b.max > 450 ? `${range} are no load in %` : null;
    case 'throttle':
      return b.min < -20 || b.max > 130 ? `${range} are no throttle position in %` : null;
    case 'maf':
      return b.min < -20 || b.max > 700 ? `${range} are no air flow in g/s` : null;
    case 'fuelStatus':
      return b.distinct > MOST_STATES ? `${range} are more than a status of the fuel system knows` : null;
    case 'other':
      return null;
  }
}

function short(value: number): string {
  return String(Number(value.toPrecision(4)));
}
