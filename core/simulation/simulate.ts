import type { Celsius, Seconds } from '../units/quantities.ts';
import { type Bank, createBank } from './bank.ts';
import type { DriveScript } from './driveScript.ts';
import { createEngine, type EngineState } from './engine.ts';
import type { Random } from './random.ts';
import type { VehicleParameters } from './vehicle.ts';

/** What truly happened in one bank, one value a step, without the instrument's noise and steps. */
export interface BankTruth {
  readonly frontV: Float32Array;
  readonly frontLambda: Float32Array;
  readonly rearV: Float32Array;
  readonly thirdV: Float32Array;
  readonly shortTrim: Float32Array;
  readonly longTrim: Float32Array;
  readonly fuelStatus: Float32Array;
  readonly brickC: Float32Array;
  /** Excess oxygen ahead of the converter, and the filled share of its storage. */
  readonly x: Float32Array;
  readonly filled: Float32Array;
}

/** A simulated drive: every quantity at every step. Sample i lies at i * stepS. */
export interface SimulatedDrive {
  readonly stepS: Seconds;
  readonly length: number;
  readonly vehicle: VehicleParameters;
  readonly rpm: Float32Array;
  readonly load: Float32Array;
  readonly air: Float32Array;
  readonly throttle: Float32Array;
  readonly speed: Float32Array;
  readonly coolantC: Float32Array;
  readonly intakeC: Float32Array;
  readonly banks: readonly BankTruth[];
}

/** Codes of the fuel system status, J1979 PID 03 (check 1.03). */
export const FUEL_STATUS = { openCold: 1, closed: 2, openDriving: 4, openFault: 8 } as const;

/**
 * Runs a vehicle along a drive. Pure: the same arguments give the same arrays.
 * @param stepS 0.005 for instruments to 100 Hz, 0.001 for analogue ones
 */
export function simulateDrive(
  vehicle: VehicleParameters,
  drive: DriveScript,
  startCoolantC: Celsius,
  random: Random,
  stepS: Seconds,
): SimulatedDrive {
  const length = Math.max(1, Math.round(drive.durationS / stepS));
  const engine = createEngine(vehicle, drive, startCoolantC, random.fork(11), stepS);
  const banks = vehicle.banks.map((bank, k) => createBank(bank, random.fork(21 + k), stepS));
  const result = emptyDrive(vehicle, length, stepS);
  const share = 1 / banks.length;
  for (let i = 0; i < length; i++) {
    const timeS = i * stepS;
    const state = engine(timeS);
    for (let k = 0; k < banks.length; k++) {
      const bank = banks[k];
      const truth = result.banks[k];
      if (!bank || !truth) continue;
      bank.step(state, state.air * share, timeS, feedbackFor(vehicle, banks, k));
      keepBank(truth, bank, state, i);
    }
    keepEngine(result, state, i);
  }
  return result;
}

/** The voltage the control gets where connectors are exchanged; null where each bank has its own. */
function feedbackFor(vehicle: VehicleParameters, banks: readonly Bank[], k: number): number | null {
  if (vehicle.exchanged === 'frontRear') return banks[k]?.output.rearV ?? null;
  if (vehicle.exchanged === 'banks' && banks.length === 2) return banks[1 - k]?.output.frontV ?? null;
  return null;
}

function emptyDrive(vehicle: VehicleParameters, length: number, stepS: Seconds): SimulatedDrive {
  const row = () => new Float32Array(length);
  const bank = (): BankTruth => ({
    frontV: row(),
    frontLambda: row(),
    rearV: row(),
    thirdV: row(),
    shortTrim: row(),
    longTrim: row(),
    fuelStatus: row(),
    brickC: row(),
    x: row(),
    filled: row(),
  });
  return {
    stepS,
    length,
    vehicle,
    rpm: row(),
    load: row(),
    air: row(),
    throttle: row(),
    speed: row(),
    coolantC: row(),
    intakeC: row(),
    banks: vehicle.banks.map(bank),
  };
}

function keepEngine(result: SimulatedDrive, state: EngineState, i: number): void {
  result.rpm[i] = state.rpm;
  result.load[i] = state.load;
  result.air[i] = state.air;
  result.throttle[i] = state.throttle;
  result.speed[i] = state.speed;
  result.coolantC[i] = state.coolantC;
  result.intakeC[i] = 24 + state.coolantC * 0.12;
}

function keepBank(truth: BankTruth, bank: Bank, state: EngineState, i: number): void {
  const { output, control } = bank;
  truth.frontV[i] = output.frontV;
  truth.frontLambda[i] = output.frontLambda;
  truth.rearV[i] = output.rearV;
  truth.thirdV[i] = output.thirdV;
  truth.shortTrim[i] = control.shortTrim;
  truth.longTrim[i] = control.longTrim;
  truth.brickC[i] = output.brickC;
  truth.x[i] = output.x;
  truth.filled[i] = output.filled;
  truth.fuelStatus[i] = output.closedLoop
    ? FUEL_STATUS.closed
    : state.coolantC <= 30
      ? FUEL_STATUS.openCold
      : state.closedLoop
        ? FUEL_STATUS.openFault
        : FUEL_STATUS.openDriving;
}
