import type { Percent, Seconds, Volts } from '../units/quantities.ts';

/** How the engine computer holds the mixture of one bank. */
export interface ControlParameters {
  /** 'relay' swings about the switch point of a switching sensor; 'linear' follows a lambda target with a dither. */
  readonly kind: 'relay' | 'linear';
  /** Relay: jump of the trim when the sensor switches, per cent of fuel. */
  readonly jump: Percent;
  /** Relay: ramp of the trim at 2250 1/min, per cent a second; slower at lower speed. */
  readonly ramp: number;
  /** Linear: forced swing of lambda (half height, share of 1), its period, and whether it is square or a triangle. */
  readonly dither: number;
  readonly ditherPeriodS: Seconds;
  readonly ditherSquare: boolean;
  /** How strongly the rear sensor pulls the mixture towards `rearGoalV`, per volt; 0 for no such trim. */
  readonly rearGain: number;
  readonly rearGoalV: Volts;
  /** Fuel added after a fuel cut until the rear sensor is rich again, per cent. */
  readonly purge: Percent;
  /** Limits of the short-term and of the long-term trim. */
  readonly shortLimit: Percent;
  readonly longLimit: Percent;
  /** Time in which the long-term trim takes over what the short-term one carries. */
  readonly longTauS: Seconds;
}

export interface ControlState {
  /** Trims, positive adds fuel. */
  shortTrim: Percent;
  longTrim: Percent;
  /** Relay: +1 while the sensor reads rich. */
  rich: 1 | -1;
  ramped: Percent;
  /** -1 to 1: how far the rear sensor asks for richer mixture. */
  rearAsk: number;
  /** The lasting part of it. */
  rearLearned: number;
  meanShort: Percent;
}

const SWITCH_V = 0.45;
const SWITCH_BAND_V = 0.02;

/** A control at its start, with the long-term trim it has learned before, per cent. */
export function createControlState(longTrim: Percent): ControlState {
  return { shortTrim: 0, longTrim, rich: -1, ramped: 0, rearAsk: 0, rearLearned: 0, meanShort: 0 };
}

/**
 * One step of a relay control with jump and ramp: the textbook limit cycle of closed-loop fuel control with a
 * switching sensor. With transport delay it swings at about a quarter of one over delay plus lag (check 3.35).
 * The rear sensor moves the mean by making the way to rich longer than the way to lean.
 */
export function stepRelay(state: ControlState, p: ControlParameters, volts: Volts, rpm: number, stepS: Seconds): void {
  if (volts > SWITCH_V + SWITCH_BAND_V) state.rich = 1;
  else if (volts < SWITCH_V - SWITCH_BAND_V) state.rich = -1;
  const skew = 1 - 0.4 * state.rearAsk * state.rich;
  const ramp = p.ramp * (rpm / 2250) ** 0.6 * skew;
  state.ramped = clamp(state.ramped - state.rich * ramp * stepS, p.shortLimit);
  state.shortTrim = clamp(state.ramped - state.rich * p.jump * skew, p.shortLimit);
}

/** One step of a proportional-integral control on lambda; `error` is measured minus wanted lambda. */
export function stepLinear(state: ControlState, p: ControlParameters, error: number, stepS: Seconds): void {
  state.ramped = clamp(state.ramped + 100 * error * 0.6 * stepS, p.shortLimit);
  state.shortTrim = clamp(state.ramped + 100 * error * 0.25, p.shortLimit);
}

/** Forced swing of the wanted lambda at a moment, share of 1. */
export function ditherAt(p: ControlParameters, timeS: Seconds): number {
  const phase = (timeS / p.ditherPeriodS) % 1;
  if (p.ditherSquare) return phase < 0.5 ? p.dither : -p.dither;
  return p.dither * (phase < 0.5 ? 4 * phase - 1 : 3 - 4 * phase);
}

/** Long-term learning and the pull of the rear sensor; stepped more rarely than the loop itself. */
export function stepSlowTrims(state: ControlState, p: ControlParameters, rearVolts: Volts, stepS: Seconds): void {
  state.meanShort += ((state.shortTrim - state.meanShort) * stepS) / 5;
  const moved = (state.meanShort * stepS) / p.longTauS;
  const next = clamp(state.longTrim + moved, p.longLimit);
  state.ramped -= next - state.longTrim;
  state.longTrim = next;
  if (p.rearGain === 0) return;
  const gap = p.rearGoalV - rearVolts;
  state.rearLearned = clamp(state.rearLearned + 0.012 * p.rearGain * gap * stepS, 0.15);
  state.rearAsk = clamp(state.rearLearned + p.rearGain * gap, 1);
}

function clamp(value: number, limit: number): number {
  return Math.max(-limit, Math.min(limit, value));
}
