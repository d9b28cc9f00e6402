import type { Celsius, GramsPerSecond, Seconds, Share, Volts } from '../units/quantities.ts';
import { brickAfter } from './brickHeat.ts';
import { createConverter } from './converter.ts';
import { createDelayLine } from './delayLine.ts';
import { createLeak, createMisfire } from './disturbances.ts';
import type { EngineState } from './engine.ts';
import { createFront, NO_READING } from './frontSensor.ts';
import type { ControlState } from './fuelControl.ts';
import { type BankSeen, createMixture } from './mixture.ts';
import type { Random } from './random.ts';
import type { BankParameters } from './vehicle.ts';
import { lagShare } from './wander.ts';
import { CIRCUIT_BIAS_V, createZirconia } from './zirconia.ts';

/** What a bank's sensors show at a moment, without noise, and what is true inside. */
export interface BankOutput extends BankSeen {
  rearV: Volts;
  thirdV: Volts;
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
const LEAST_AIR: GramsPerSecond = 0.8;
/** Slow parts (trims, temperature, drift) move every this many steps. */
const SLOW_EVERY = 10;
/** A second brick is cooler than the first by about this much. */
const SECOND_COOLER_K = 60;
const HALF_FULL = 0.5;
/** Angle of the half order, once every second turn, for each second and 1/min: pi/60. */
const HALF_ORDER = 0.05236;

/** One bank from injection to the last sensor, as a stepper. Faults are parameters of the parts. */
export function createBank(p: BankParameters, random: Random, stepS: Seconds): Bank {
  const output = startOutput(p);
  const mixture = createMixture(p, random.fork(1), stepS, stepS * SLOW_EVERY);
  const toFront = createDelayLine(DELAY_STEPS, 0);
  const front = createFront(p.front, stepS);
  const misfires = createMisfire(p.mixture, random.fork(2), stepS);
  const leak = createLeak(p.leaks, random.fork(3), stepS);
  const behind = createBehind(p, stepS);
  const mixing = lagShare(p.exhaust.mixingS, stepS);
  let gas = 0;
  let count = 0;
  return {
    control: mixture.control,
    output,
    step(engine, air, timeS, feedbackV) {
      mixture.stepLoop(engine, output);
      if (count++ % SLOW_EVERY === 0) {
        output.brickC = brickAfter(output.brickC, p, air, engine.fuelCut, stepS * SLOW_EVERY);
        mixture.stepSlow(output);
      }
      const cylinder = mixture.step(engine, output, timeS, feedbackV);
      const delayS = 120 / Math.max(300, engine.rpm) + gasTime(p.exhaust.frontLitres, air);
      gas += (toFront.step(cylinder, delayS / stepS) - gas) * mixing;
      const uneven = p.mixture.unevenness * Math.sin(timeS * engine.rpm * HALF_ORDER);
      const heat = sensorHeat(timeS, engine.coolantC);
      front(output, gas + uneven + misfires(engine.rpm) + leak(p.leaks.aheadOfFront, air), heat);
      output.x = gas + (p.leaks.beforeConverter ? leak(p.leaks.aheadOfRear, air) : 0);
      behind(output, air, heat, p.leaks.beforeConverter ? 0 : leak(p.leaks.aheadOfRear, air));
      return output;
    },
  };
}

function startOutput(p: BankParameters): BankOutput {
  return {
    ...NO_READING,
    rearV: CIRCUIT_BIAS_V,
    thirdV: CIRCUIT_BIAS_V,
    closedLoop: false,
    brickC: p.exhaust.startC,
    x: 0,
    filled: HALF_FULL,
  };
}

/** How long gas takes through a volume. */
function gasTime(litres: number, air: GramsPerSecond): Seconds {
  return (litres * GAS_DENSITY) / Math.max(LEAST_AIR, air);
}

/** How warm the sensors' cells are, 0 to 1: heaters need some 12 s, a warm engine's exhaust none. */
function sensorHeat(timeS: Seconds, coolantC: Celsius): Share {
  return Math.min(1, timeS / 12 + Math.max(0, (coolantC - 25) / 40));
}

/** Everything behind the front sensor: bricks, rear sensor, third sensor. */
function createBehind(p: BankParameters, stepS: Seconds) {
  const first = createConverter(p.converter, stepS, HALF_FULL);
  const second = p.secondBrick ? createConverter(p.secondBrick, stepS, HALF_FULL) : null;
  const toRear = createDelayLine(DELAY_STEPS, 0);
  const rear = createZirconia(p.rear, stepS);
  const third = createZirconia(p.rear, stepS);
  return (output: BankOutput, air: GramsPerSecond, heat: Share, leakedIn: number): void => {
    const left = first.step(output.x, air, output.brickC);
    const atRear = toRear.step(left, gasTime(p.exhaust.rearLitres, air) / stepS) + leakedIn;
    output.rearV = rear(atRear, heat);
    if (second) output.thirdV = third(second.step(atRear, air, output.brickC - SECOND_COOLER_K), heat);
    output.filled = first.filled();
  };
}
