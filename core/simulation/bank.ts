import { excessOxygen } from '../model/oxygenFlow.ts';
import type { Celsius, GramsPerSecond, Seconds, Share, Volts } from '../units/quantities.ts';
import { type Converter, createConverter, lightOff } from './converter.ts';
import { createDelayLine } from './delayLine.ts';
import type { EngineState } from './engine.ts';
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
import { createZirconia } from './zirconia.ts';

/** What a bank's sensors show at a moment, without noise, and what is true inside. */
export interface BankOutput {
  frontV: Volts;
  frontLambda: number;
  rearV: Volts;
  thirdV: Volts;
  closedLoop: boolean;
  brickC: Celsius;
  /** Excess oxygen ahead of the converter. */
  x: number;
  filled: Share;
}

export interface Bank {
  readonly control: ControlState;
  readonly output: BankOutput;
  /** One step. `feedbackV` replaces the bank's own front sensor where connectors are exchanged. */
  step(engine: EngineState, air: GramsPerSecond, timeS: Seconds, feedbackV: Volts | null): BankOutput;
}

const DELAY_STEPS = 1024;
/** Density of exhaust gas at about 500 °C, g/L. */
const GAS_DENSITY = 0.45;
/** Rear voltage at which the computer takes the converter for emptied after a fuel cut; common practice, no source. */
const PURGED_V = 0.58;
/** Slow parts (trims, temperature, drift) move every this many steps. */
const SLOW_EVERY = 10;

/** One bank from injection to the last sensor, as a stepper. Faults are parameters of the parts. */
export function createBank(p: BankParameters, random: Random, stepS: Seconds): Bank {
  const control = createControlState(p.mixture.learned);
  const toFront = createDelayLine(DELAY_STEPS, 0);
  const toRear = createDelayLine(DELAY_STEPS, 0);
  const front = createFront(p, stepS);
  const rear = createZirconia(p.rear, stepS);
  const third = createZirconia(p.rear, stepS);
  const bricks = createBricks(p, stepS);
  const drift = createWander(random.fork(1), p.mixture.drift, 20, stepS * SLOW_EVERY);
  const misfires = createMisfire(p, random.fork(2), stepS);
  const leak = createLeak(p, random.fork(3), stepS);
  const mixing = lagShare(p.exhaust.mixingS, stepS);
  const output: BankOutput = {
    frontV: 0.45,
    frontLambda: 1,
    rearV: 0.45,
    thirdV: 0.45,
    closedLoop: false,
    brickC: p.exhaust.startC,
    x: 0,
    filled: 0.5,
  };
  let error = p.mixture.error;
  let purged = false;
  let wet = 0;
  let gas = 0;
  let count = 0;
  return {
    control,
    output,
    step(engine, air, timeS, feedbackV) {
      purged = engine.purging && (purged || output.rearV > PURGED_V);
      const purge = engine.purging && !purged;
      output.closedLoop = engine.closedLoop && !purge && !p.mixture.openLoopFault;
      if (count++ % SLOW_EVERY === 0) {
        error = p.mixture.error + drift();
        stepBrick(output, p, air, engine.fuelCut, stepS * SLOW_EVERY);
        if (output.closedLoop) stepSlowTrims(control, p.control, output.rearV, stepS * SLOW_EVERY);
      }
      wet += (p.mixture.transient * engine.loadRate - wet) * lagShare(0.35, stepS);
      const goal = wantedLambda(p, output, engine, timeS) - (purge ? p.control.purge / 100 : 0);
      stepTrim(p, control, output, engine, feedbackV, stepS);
      const fuel = (1 + (error - wet) / 100) * (1 + (control.shortTrim + control.longTrim) / 100);
      const cylinder = engine.fuelCut ? 1 : excessOxygen(goal / fuel);
      const uneven = p.mixture.unevenness * Math.sin(timeS * engine.rpm * 0.05236);
      const delay = 120 / Math.max(300, engine.rpm) + (p.exhaust.frontLitres * GAS_DENSITY) / Math.max(0.8, air);
      gas += (toFront.step(cylinder, delay / stepS) - gas) * mixing;
      const heat = Math.min(1, timeS / 12 + Math.max(0, (engine.coolantC - 25) / 40));
      front(output, gas + uneven + misfires(engine.rpm) + leak(p.leaks.aheadOfFront, air), heat);
      const entering = gas + (p.leaks.beforeConverter ? leak(p.leaks.aheadOfRear, air) : 0);
      const left = bricks.first.step(entering, air, output.brickC);
      const wayS = (p.exhaust.rearLitres * GAS_DENSITY) / Math.max(0.8, air);
      const atRear = toRear.step(left, wayS / stepS) + (p.leaks.beforeConverter ? 0 : leak(p.leaks.aheadOfRear, air));
      output.rearV = rear(atRear, heat);
      if (bricks.second) output.thirdV = third(bricks.second.step(atRear, air, output.brickC - 60), heat);
      output.x = entering;
      output.filled = bricks.first.filled();
      return output;
    },
  };
}

function createBricks(p: BankParameters, stepS: Seconds): { first: Converter; second: Converter | null } {
  const first = createConverter(p.converter, stepS, 0.5);
  return { first, second: p.secondBrick ? createConverter(p.secondBrick, stepS, 0.5) : null };
}

function createFront(p: BankParameters, stepS: Seconds): (out: BankOutput, x: number, heat: Share) => void {
  const sensor = p.front;
  if (sensor.kind === 'switching') {
    const cell = createZirconia(sensor.cell, stepS);
    return (out, x, heat) => {
      out.frontV = cell(x, heat);
    };
  }
  const share = lagShare(sensor.lagS, stepS);
  let seen = 0;
  return (out, x) => {
    seen += (Math.min(0.6, x) - seen) * share;
    out.frontLambda = Math.min(1.999, 1 / (1 - seen) + sensor.bias);
  };
}

function wantedLambda(p: BankParameters, output: BankOutput, engine: EngineState, timeS: Seconds): number {
  if (!output.closedLoop || p.control.kind === 'relay') return engine.lambdaGoal;
  return engine.lambdaGoal + ditherAt(p.control, timeS);
}

/** The trim of this step: relay or linear in closed loop, held at 0 else. */
function stepTrim(
  p: BankParameters,
  control: ControlState,
  output: BankOutput,
  engine: EngineState,
  feedbackV: Volts | null,
  stepS: Seconds,
): void {
  if (!output.closedLoop) {
    control.shortTrim = 0;
    control.ramped = 0;
    return;
  }
  if (p.control.kind === 'relay') {
    stepRelay(control, p.control, feedbackV ?? output.frontV, engine.rpm, stepS);
    return;
  }
  // Compared with the mean of the wanted lambda: the forced swing passes, as the loop is slower than the dither.
  const asked = -0.006 * control.rearAsk;
  const measured = feedbackV === null ? output.frontLambda : 1 + (0.45 - feedbackV) * 0.1;
  stepLinear(control, p.control, measured - (engine.lambdaGoal + asked), stepS);
}

/** Brick temperature: pulled to the gas's at a pace that rises with flow, plus what it oxidises once lit. */
function stepBrick(out: BankOutput, p: BankParameters, air: GramsPerSecond, cut: boolean, stepS: Seconds): void {
  const { idleGasC, holdGasC, warmTauS, exothermK } = p.exhaust;
  const gasC = cut ? 320 : idleGasC + (holdGasC - idleGasC) * Math.min(2, Math.sqrt(air / 10));
  const rise = cut ? 0 : (exothermK + 1500 * p.mixture.misfire) * lightOff(p.converter, out.brickC);
  out.brickC += ((gasC + rise - out.brickC) * stepS * Math.min(3, 0.15 + (0.85 * air) / 10)) / warmTauS;
}

/** Unburnt oxygen of misfires as the front sensor meets it: pulses of pure air, one cylinder's share, mixed. */
function createMisfire(p: BankParameters, random: Random, stepS: Seconds): (rpm: number) => number {
  const share = lagShare(0.05, stepS);
  let pulse = 0;
  let leftS = 0;
  return (rpm) => {
    if (p.mixture.misfire === 0) return 0;
    const cyclesAStep = (rpm / 120) * stepS * 4;
    if (leftS <= 0 && random.chance(p.mixture.misfire * cyclesAStep)) leftS = 30 / rpm;
    leftS -= stepS;
    pulse += ((leftS > 0 ? 0.9 : 0) - pulse) * share;
    return pulse;
  };
}

/** Excess oxygen from outside air: a share that falls with flow, coming in pulses. */
function createLeak(
  p: BankParameters,
  random: Random,
  stepS: Seconds,
): (leakGS: number, air: GramsPerSecond) => number {
  const none = p.leaks.aheadOfFront === 0 && p.leaks.aheadOfRear === 0;
  const pulse = createWander(random, 0.6, 1 / (2 * Math.PI * p.leaks.pulseHz), stepS);
  return (leakGS, air) => {
    if (none || leakGS === 0) return 0;
    return (Math.max(0, 1 + pulse()) * leakGS) / (leakGS + air * (air / 3) ** 0.5);
  };
}
