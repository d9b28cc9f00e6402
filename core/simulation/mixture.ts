import { excessOxygen } from '../model/oxygenFlow.ts';
import type { Seconds, Volts } from '../units/quantities.ts';
import type { EngineState } from './engine.ts';
import type { FrontReading } from './frontSensor.ts';
import {
  type ControlState,
  createControlState,
  ditherAt,
  stepLinear,
  stepRelay,
  stepSlowTrims,
} from './fuelControl.ts';
import type { Random } from './random.ts';
import type { BankParameters } from './vehicle.ts';
import { createWander, lagShare } from './wander.ts';

/** What the computer sees of a bank when it meters the fuel. */
export interface BankSeen extends FrontReading {
  readonly rearV: Volts;
  closedLoop: boolean;
}

/** The fuel of one bank: the computer's control with everything that disturbs it. */
export interface Mixture {
  readonly control: ControlState;
  /** First in each step: whether the loop is closed now. */
  stepLoop(engine: EngineState, seen: BankSeen): void;
  /** The slow parts: trims and the drift of the error, `slowS` later each call. */
  stepSlow(seen: BankSeen): void;
  /** Excess oxygen of the gas that leaves the cylinders now. `feedbackV` replaces an exchanged front sensor. */
  step(engine: EngineState, seen: BankSeen, timeS: Seconds, feedbackV: Volts | null): number;
}

/** Rear voltage at which the computer takes the converter for emptied after a fuel cut; common practice, no source. */
const PURGED_V = 0.58;
/** Memory of the film of fuel on the intake's walls, and of the drift of the error. */
const WALL_FILM_S: Seconds = 0.35;
const DRIFT_S: Seconds = 20;
/** How far the rear sensor may move the wanted lambda of a linear control. */
const REAR_LAMBDA = 0.006;

/** A mixture at its start. `slowS` is the time between two calls of stepSlow. */
export function createMixture(p: BankParameters, random: Random, stepS: Seconds, slowS: Seconds): Mixture {
  const control = createControlState(p.mixture.learned);
  const drift = createWander(random, p.mixture.drift, DRIFT_S, slowS);
  const filmShare = lagShare(WALL_FILM_S, stepS);
  let error = p.mixture.error;
  let film = 0;
  let purged = false;
  return {
    control,
    stepLoop(engine, seen) {
      purged = engine.purging && (purged || seen.rearV > PURGED_V);
      seen.closedLoop = engine.closedLoop && !(engine.purging && !purged) && !p.mixture.openLoopFault;
    },
    stepSlow(seen) {
      error = p.mixture.error + drift();
      if (seen.closedLoop) stepSlowTrims(control, p.control, seen.rearV, slowS);
    },
    step(engine, seen, timeS, feedbackV) {
      film += (p.mixture.transient * engine.loadRate - film) * filmShare;
      const swing = seen.closedLoop && p.control.kind === 'linear' ? ditherAt(p.control, timeS) : 0;
      const goal = engine.lambdaGoal + swing - (engine.purging && !purged ? p.control.purge / 100 : 0);
      stepTrim(p, control, seen, engine, feedbackV, stepS);
      const fuel = (1 + (error - film) / 100) * (1 + (control.shortTrim + control.longTrim) / 100);
      return engine.fuelCut ? 1 : excessOxygen(goal / fuel);
    },
  };
}

/** The trim of this step: relay or linear in closed loop, held at 0 else. */
function stepTrim(
  p: BankParameters,
  control: ControlState,
  seen: BankSeen,
  engine: EngineState,
  feedbackV: Volts | null,
  stepS: Seconds,
): void {
  if (!seen.closedLoop) {
    control.shortTrim = 0;
    control.ramped = 0;
    return;
  }
  if (p.control.kind === 'relay') {
    stepRelay(control, p.control, feedbackV ?? seen.frontV, engine.rpm, stepS);
    return;
  }
  // Compared with the mean of the wanted lambda: the forced swing passes, as the loop is slower than the dither.
  const wanted = engine.lambdaGoal - REAR_LAMBDA * control.rearAsk;
  const measured = feedbackV === null ? seen.frontLambda : 1 + (0.45 - feedbackV) * 0.1;
  stepLinear(control, p.control, measured - wanted, stepS);
}
