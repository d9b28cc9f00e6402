import type { Celsius, GramsPerSecond, Seconds } from '../units/quantities.ts';
import { lightOff } from './converter.ts';
import type { BankParameters } from './vehicle.ts';

/** Gas of an engine that pumps air without fuel. */
const OVERRUN_GAS_C: Celsius = 320;
/** Rise for each share of the cycles that misfire: their fuel burns in the brick. */
const MISFIRE_K = 1500;
/** Air flow at which the parameters' time constant holds. */
const NOMINAL_GS: GramsPerSecond = 10;

/** Brick temperature a step later: pulled to the gas's at a pace that rises with flow, plus what it oxidises once lit. */
export function brickAfter(
  brickC: Celsius,
  p: BankParameters,
  air: GramsPerSecond,
  fuelCut: boolean,
  stepS: Seconds,
): Celsius {
  const { idleGasC, holdGasC, warmTauS, exothermK } = p.exhaust;
  const gasC = fuelCut ? OVERRUN_GAS_C : idleGasC + (holdGasC - idleGasC) * Math.min(2, Math.sqrt(air / NOMINAL_GS));
  const rise = fuelCut ? 0 : (exothermK + MISFIRE_K * p.mixture.misfire) * lightOff(p.converter, brickC);
  return brickC + ((gasC + rise - brickC) * stepS * Math.min(3, 0.15 + (0.85 * air) / NOMINAL_GS)) / warmTauS;
}
