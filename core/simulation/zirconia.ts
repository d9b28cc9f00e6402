import type { Celsius, Share, Volts } from '../units/quantities.ts';
import { AIR_OXYGEN, nernstVolts, richOxygenPressure } from './nernst.ts';
import { lagShare } from './wander.ts';

/** A switching (zirconia) oxygen sensor, with what age does to it. */
export interface ZirconiaParameters {
  /** Temperature of the heated cell. */
  readonly temperatureC: Celsius;
  /** Half width of the step around lambda 1, in excess oxygen 1 - 1/lambda. */
  readonly width: number;
  /** Shift of the step: a sensor with +0.005 switches while the gas is 0.5 % lean. */
  readonly shift: number;
  /** Lag of the gas in the protective layer, s. */
  readonly gasLagS: number;
  /** Lag of the falling (rich to lean) and of the rising (lean to rich) voltage, s. */
  readonly fallLagS: number;
  readonly riseLagS: number;
  /** 1 for a full swing; less for a worn-out cell. */
  readonly span: Share;
  /** Added to the voltage: ground offset, poisoned reference air. */
  readonly offsetV: Volts;
  readonly noiseV: Volts;
  /** 'dead' stays at the computer's own bias, 'stuck' at `stuckV`; both only carry noise. */
  readonly health: 'works' | 'dead' | 'stuck';
  readonly stuckV: Volts;
}

/** Voltage the measuring circuit shows while a cell is too cold to conduct; common practice, no source. */
export const CIRCUIT_BIAS_V = 0.45;

const TABLE_HALF = 0.15;
const TABLE_STEPS = 3000;

/**
 * Static voltage of a healthy cell against excess oxygen x = 1 - 1/lambda (negative when rich; 1 for pure air).
 * Lean: Nernst with the free oxygen; rich: Nernst with the oxygen left by CO in equilibrium (nernst.ts). Real
 * electrodes smear the step; the two branches are blended over `width` (common practice, no source).
 */
export function zirconiaVolts(x: number, temperatureC: Celsius, width: number): Volts {
  const leanO2 = Math.max(AIR_OXYGEN * x, 3e-4);
  const richCo = Math.max(-0.36 * x, 4e-4);
  const lean = nernstVolts(temperatureC, AIR_OXYGEN, leanO2);
  const rich = nernstVolts(temperatureC, AIR_OXYGEN, richOxygenPressure(temperatureC, richCo, 0.26));
  const richShare = 1 / (1 + Math.exp(Math.max(-60, Math.min(60, x / width))));
  return lean + (rich - lean) * richShare;
}

/** The static curve as a table over x from -0.15 to 0.15, for speed; beyond it the curve itself. */
function tabulate(parameters: ZirconiaParameters): (x: number) => Volts {
  const table = new Float64Array(TABLE_STEPS + 1);
  const step = (2 * TABLE_HALF) / TABLE_STEPS;
  const { temperatureC, width } = parameters;
  for (let i = 0; i <= TABLE_STEPS; i++) table[i] = zirconiaVolts(i * step - TABLE_HALF, temperatureC, width);
  return (x) => {
    const place = (x + TABLE_HALF) / step;
    if (!(place >= 0 && place < TABLE_STEPS)) return zirconiaVolts(Math.min(1, x), temperatureC, width);
    const index = Math.floor(place);
    const low = table[index] ?? 0;
    return low + ((table[index + 1] ?? low) - low) * (place - index);
  };
}

/**
 * A sensor as a stepper: give it the excess oxygen of the gas and how warm the cell is (0 cold, 1 working), get the
 * voltage at its terminals without noise. First-order lags, slower one way than the other (check 4.30, 4.31).
 */
export function createZirconia(parameters: ZirconiaParameters, stepS: number): (x: number, heat: Share) => Volts {
  const curve = tabulate(parameters);
  const gasShare = lagShare(parameters.gasLagS, stepS);
  const fallShare = lagShare(parameters.fallLagS, stepS);
  const riseShare = lagShare(parameters.riseLagS, stepS);
  let gas = 0;
  let cell = CIRCUIT_BIAS_V;
  return (x, heat) => {
    if (parameters.health === 'dead') return CIRCUIT_BIAS_V;
    if (parameters.health === 'stuck') return parameters.stuckV;
    gas += (x - parameters.shift - gas) * gasShare;
    const goal = curve(gas);
    cell += (goal - cell) * (goal < cell ? fallShare : riseShare);
    const shown = CIRCUIT_BIAS_V + (cell - CIRCUIT_BIAS_V) * parameters.span * heat;
    return shown + parameters.offsetV;
  };
}
