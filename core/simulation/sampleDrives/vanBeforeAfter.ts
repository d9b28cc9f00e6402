import { layDrive } from '../driveScript.ts';
import { logDrive } from '../instruments/logger.ts';
import { type TextLayout, writeText } from '../layoutText/textLayout.ts';
import { createRandom } from '../random.ts';
import { COOLANT, frontVolts, fuelStatus, LOAD, longTrim, MAF, RPM, rearVolts, SPEED, shortTrim } from '../signals.ts';
import { simulateDrive } from '../simulate.ts';
import type { VehicleParameters } from '../vehicle.ts';
import { BAY_TEST } from './bayTest.ts';
import { VAN_14_AFTER, VAN_14_BEFORE } from './vans.ts';

const LAYOUT: TextLayout = {
  delimiter: ',',
  decimal: '.',
  lineEnd: '\n',
  before: [],
  timeHead: 'Time',
  timeUnit: 's',
  units: 'row',
  writeTime: (timeS) => timeS.toFixed(2),
  columns: [
    { head: 'Engine speed', unit: '1/min', digits: 0 },
    { head: 'O2S B1S1', unit: 'V', digits: 3 },
    { head: 'O2S B1S2', unit: 'V', digits: 3 },
    { head: 'Coolant temperature', unit: '°C', digits: 0 },
    { head: 'STFT B1', unit: '%', digits: 1 },
    { head: 'LTFT B1', unit: '%', digits: 1 },
    { head: 'Mass air flow', unit: 'g/s', digits: 2 },
    { head: 'Calculated load', unit: '%', digits: 1 },
    { head: 'Vehicle speed', unit: 'km/h', digits: 0 },
    { head: 'Fuel system status B1', unit: '', digits: 0 },
  ],
};

/** Commas, a row of units, ten rows a second. */
function vanText(vehicle: VehicleParameters, startCoolantC: number, seed: number): string {
  const random = createRandom(seed);
  const drive = simulateDrive(vehicle, layDrive(BAY_TEST), startCoolantC, random.fork(1), 0.005);
  const signals = [
    RPM,
    frontVolts(1),
    rearVolts(1),
    COOLANT,
    shortTrim(1),
    longTrim(1),
    MAF,
    LOAD,
    SPEED,
    fuelStatus(1),
  ];
  const options = { rateHz: 10, jitterS: 0.016, sensorHz: 10, otherHz: 5, latencyS: 0.03, lost: 0 };
  return writeText(logDrive(drive, signals, options, random.fork(2)), LAYOUT);
}

/** Van 14 before the repair. */
export function vanBeforeText(): string {
  return vanText(VAN_14_BEFORE, 71, 1401);
}

/** The same test after it. */
export function vanAfterText(): string {
  return vanText(VAN_14_AFTER, 69, 1402);
}
