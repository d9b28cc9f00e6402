import { SOUND_BANK, SOUND_VEHICLE } from '../defaults.ts';
import { layDrive } from '../driveScript.ts';
import { logDrive } from '../instruments/logger.ts';
import { clockText, type TextLayout, writeText } from '../layoutText/textLayout.ts';
import { createRandom } from '../random.ts';
import { COOLANT, frontVolts, LOAD, longTrim, MAF, RPM, rearVolts, SPEED, shortTrim } from '../signals.ts';
import { simulateDrive } from '../simulate.ts';
import type { VehicleParameters } from '../vehicle.ts';
import { BAY_TEST } from './bayTest.ts';

/** A six-cylinder car of our own invention, three litres; the converter of bank 2 is spent, that of bank 1 aged. */
const CAR: VehicleParameters = {
  ...SOUND_VEHICLE,
  litres: 3,
  banks: [
    { ...SOUND_BANK, converter: { ...SOUND_BANK.converter, capacityG: 0.5 } },
    {
      ...SOUND_BANK,
      converter: { ...SOUND_BANK.converter, capacityG: 0.03 },
      control: { ...SOUND_BANK.control, jump: 1.5, ramp: 2.8 },
      mixture: { ...SOUND_BANK.mixture, error: -2.2, learned: 2 },
    },
  ],
};

const STARTED_AT_S = ((14 * 60 + 6) * 60 + 31) * 1;

const LAYOUT: TextLayout = {
  delimiter: ';',
  decimal: ',',
  lineEnd: '\r\n',
  before: [
    'Invented recording, made by the simulation of Tailtrace',
    'Vehicle;Car with two banks',
    'Date;18.04.2024',
    '',
  ],
  timeHead: 'Clock time',
  timeUnit: 'hh:mm:ss',
  units: 'row',
  writeTime: (timeS) => clockText(STARTED_AT_S + timeS, 3, ','),
  columns: [
    { head: 'Engine speed', unit: '1/min', digits: 0 },
    { head: 'O2 sensor B1 S1', unit: 'V', digits: 3 },
    { head: 'O2 sensor B1 S2', unit: 'V', digits: 3 },
    { head: 'O2 sensor B2 S1', unit: 'V', digits: 3 },
    { head: 'O2 sensor B2 S2', unit: 'V', digits: 3 },
    { head: 'STFT B1', unit: '%', digits: 2 },
    { head: 'STFT B2', unit: '%', digits: 2 },
    { head: 'LTFT B1', unit: '%', digits: 2 },
    { head: 'LTFT B2', unit: '%', digits: 2 },
    { head: 'Coolant temperature', unit: '°C', digits: 0 },
    { head: 'Mass air flow', unit: 'g/s', digits: 2 },
    { head: 'Engine load', unit: '%', digits: 1 },
    { head: 'Vehicle speed', unit: 'km/h', digits: 0 },
  ],
};

/** Semicolons, decimal commas, clock times, units in a row of their own; ten rows a second. */
export function carTwoBanksText(): string {
  const random = createRandom(3001);
  const drive = simulateDrive(CAR, layDrive(BAY_TEST), 73, random.fork(1), 0.005);
  const signals = [
    RPM,
    frontVolts(1),
    rearVolts(1),
    frontVolts(2),
    rearVolts(2),
    shortTrim(1),
    shortTrim(2),
    longTrim(1),
    longTrim(2),
    COOLANT,
    MAF,
    LOAD,
    SPEED,
  ];
  const options = { rateHz: 10, jitterS: 0.02, sensorHz: 10, otherHz: 4, latencyS: 0.04, lost: 0 };
  return writeText(logDrive(drive, signals, options, random.fork(2)), LAYOUT);
}
