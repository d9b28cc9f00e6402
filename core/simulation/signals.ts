import type { Bank, Role } from '../capture/roles.ts';
import type { BankTruth, SimulatedDrive } from './simulate.ts';
import type { VehicleParameters } from './vehicle.ts';

/** One quantity an instrument can ask for. */
export interface Signal {
  readonly role: Role;
  readonly bank: Bank;
  readonly sensor: number | null;
  /** Smallest step of the data list for it (SAE J1979, checks 1.04 to 1.18), in the role's unit. */
  readonly step: number;
  /** Noise before rounding, deviation, in the role's unit; null takes the sensor's own. */
  readonly noise: number | null;
  /** How the true value is had. */
  read(drive: SimulatedDrive): Float32Array;
}

const VOLT_STEP = 0.005;
const TRIM_STEP = 100 / 128;
const SHARE_STEP = 100 / 255;

export const RPM: Signal = engineSignal('rpm', 0.25, 3, (drive) => drive.rpm);
export const COOLANT: Signal = engineSignal('coolant', 1, 0.1, (drive) => drive.coolantC);
export const INTAKE_AIR: Signal = engineSignal('intakeAir', 1, 0.1, (drive) => drive.intakeC);
export const MAF: Signal = engineSignal('maf', 0.01, 0.06, (drive) => drive.air);
export const LOAD: Signal = engineSignal('load', SHARE_STEP, 0.2, (drive) => drive.load);
export const SPEED: Signal = engineSignal('speed', 1, 0.05, (drive) => drive.speed);
export const THROTTLE: Signal = engineSignal('throttle', SHARE_STEP, 0.1, (drive) => drive.throttle);

/** Voltage of a switching front sensor, or of whatever is plugged into its harness. */
export function frontVolts(bank: 1 | 2): Signal {
  return bankSignal('upstreamO2', bank, 1, VOLT_STEP, null, (truth, { exchanged }) =>
    exchanged === 'frontRear' ? truth.rearV : truth.frontV,
  );
}

/** Lambda of a wideband front sensor. */
export function frontLambda(bank: 1 | 2): Signal {
  return bankSignal('upstreamLambda', bank, 1, 2 / 65536, 0.0008, (truth) => truth.frontLambda);
}

/** Voltage of the rear sensor, or of whatever is plugged into its harness. */
export function rearVolts(bank: 1 | 2): Signal {
  return bankSignal('downstreamO2', bank, 2, VOLT_STEP, null, (truth, { exchanged }) =>
    exchanged === 'frontRear' ? truth.frontV : truth.rearV,
  );
}

/** Voltage of a third sensor behind a second brick. */
export function thirdVolts(bank: 1 | 2): Signal {
  return bankSignal('downstreamO2', bank, 3, VOLT_STEP, null, (truth) => truth.thirdV);
}

/** Short-term fuel trim. */
export function shortTrim(bank: 1 | 2): Signal {
  return bankSignal('stft', bank, null, TRIM_STEP, 0, (truth) => truth.shortTrim);
}

/** Long-term fuel trim. */
export function longTrim(bank: 1 | 2): Signal {
  return bankSignal('ltft', bank, null, TRIM_STEP, 0, (truth) => truth.longTrim);
}

/** Fuel system status as a code of J1979 PID 03. */
export function fuelStatus(bank: 1 | 2): Signal {
  return bankSignal('fuelStatus', bank, null, 1, 0, (truth) => truth.fuelStatus);
}

/** Temperature of the first brick, as a computer models it. */
export function brickTemperature(bank: 1 | 2): Signal {
  return bankSignal('catalystTemp', bank, null, 0.1, 0.2, (truth) => truth.brickC);
}

function engineSignal(role: Role, step: number, noise: number, read: Signal['read']): Signal {
  return { role, bank: null, sensor: null, step, noise, read };
}

function bankSignal(
  role: Role,
  bank: 1 | 2,
  sensor: number | null,
  step: number,
  noise: number | null,
  of: (truth: BankTruth, vehicle: VehicleParameters) => Float32Array,
): Signal {
  const read = (drive: SimulatedDrive) => {
    // A front sensor plugged into the other bank's harness is seen under the other bank's name.
    const crossed = drive.vehicle.exchanged === 'banks' && sensor === 1;
    const truth = drive.banks[crossed ? 2 - bank : bank - 1];
    if (!truth) throw new Error(`The simulated vehicle has no bank ${bank}.`);
    return of(truth, drive.vehicle);
  };
  return { role, bank, sensor, step, noise, read };
}
