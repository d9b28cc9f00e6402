import type { Celsius, Hertz, Percent, RevolutionsPerMinute, Seconds, Share } from '../units/quantities.ts';
import type { ConverterParameters } from './converter.ts';
import type { ControlParameters } from './fuelControl.ts';
import type { ZirconiaParameters } from './zirconia.ts';

/** A vehicle of our own invention. Values from memory of the trade: orders of magnitude, varied by the population. */
export interface VehicleParameters {
  readonly litres: number;
  readonly engine: EngineParameters;
  /** One or two banks. */
  readonly banks: readonly BankParameters[];
  /** Harness faults between sensors; 'banks' exchanges the front sensors of the two banks. */
  readonly exchanged: 'none' | 'frontRear' | 'banks';
}

export interface EngineParameters {
  /** Calculated load at warm idle and at an unloaded hold at 2250 1/min, per cent. */
  readonly idleLoad: Percent;
  readonly holdLoad: Percent;
  readonly coolantGoalC: Celsius;
  /** Time in which the coolant closes most of its gap, s. */
  readonly coolantTauS: Seconds;
  /** Above this speed a closed throttle cuts the fuel; below 1150 1/min it returns. */
  readonly cutAbove: RevolutionsPerMinute;
  /** How long at most fuel is added after a cut to empty the converter. */
  readonly purgeS: Seconds;
  /** Wander of the speed in a hold: deviation. */
  readonly rpmWander: RevolutionsPerMinute;
  /** Wander of the load, share of the load. */
  readonly loadWander: Share;
}

export interface BankParameters {
  readonly control: ControlParameters;
  readonly front: FrontSensor;
  readonly rear: ZirconiaParameters;
  readonly converter: ConverterParameters;
  /** A second brick behind the rear sensor, and a third sensor behind it. */
  readonly secondBrick: ConverterParameters | null;
  readonly exhaust: ExhaustParameters;
  readonly mixture: MixtureParameters;
  readonly leaks: LeakParameters;
}

export type FrontSensor =
  | { readonly kind: 'switching'; readonly cell: ZirconiaParameters }
  | { readonly kind: 'wideband'; readonly lagS: Seconds; readonly bias: number };

export interface ExhaustParameters {
  /** Gas volume from valves to front sensor and from there to the rear one, litres: what makes the delays. */
  readonly frontLitres: number;
  readonly rearLitres: number;
  /** Mixing of the gas on its way to the front sensor, s. */
  readonly mixingS: Seconds;
  /** Converter temperature at the start, and the gas temperature at idle and at 10 g/s per bank. */
  readonly startC: Celsius;
  readonly idleGasC: Celsius;
  readonly holdGasC: Celsius;
  /** Heat capacity of the brick over that of the gas flow: time constant at 10 g/s, s. */
  readonly warmTauS: Seconds;
  /** Rise from what the converter oxidises on a clean engine, K (check 5.04). */
  readonly exothermK: number;
}

export interface MixtureParameters {
  /** Fuel error before trims, per cent; positive is rich. */
  readonly error: Percent;
  /** Its slow drift: deviation. */
  readonly drift: Percent;
  /** Error when air flow rises quickly: lean on tip-in, rich on tip-out, per cent per (share of load a second). */
  readonly transient: number;
  /** Differences between the cylinders, share of lambda, one cycle every second turn. */
  readonly unevenness: Share;
  /** Cycles that misfire. */
  readonly misfire: Share;
  /** True for a computer in emergency running: no closed loop, mixture as `error` has it. */
  readonly openLoopFault: boolean;
  /** Long-term trim already learned at the start, per cent. */
  readonly learned: Percent;
}

/** Outside air drawn in, as g/s at idle; the share falls as the flow rises (common practice, no source). */
export interface LeakParameters {
  readonly aheadOfFront: number;
  readonly aheadOfRear: number;
  /** True where the air enters ahead of the converter. */
  readonly beforeConverter: boolean;
  /** How fast the leak pulses come through. */
  readonly pulseHz: Hertz;
}
