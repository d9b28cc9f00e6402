import type { DriveStep } from '../driveScript.ts';
import { layDrive } from '../driveScript.ts';
import { logDrive } from '../instruments/logger.ts';
import { clockText, type TextLayout, writeText } from '../layoutText/textLayout.ts';
import { createRandom } from '../random.ts';
import { COOLANT, frontVolts, LOAD, longTrim, MAF, RPM, rearVolts, SPEED, shortTrim, THROTTLE } from '../signals.ts';
import { simulateDrive } from '../simulate.ts';
import { VAN_9 } from './vans.ts';

/** From stop to `speed`, there for a while, and back to a stop. */
function trip(speed: number, seconds: number, standS: number): DriveStep[] {
  const rpm = 1250 + speed * 12;
  const load = 22 + speed * 0.22;
  return [
    { does: 'drive', seconds, rpm, load, speed, rampS: 4 + speed / 9 },
    { does: 'overrun', seconds: 4 + speed / 11, rpm: 1050, speed: speed * 0.3 },
    { does: 'idle', seconds: standS },
  ];
}

function cruise(speed: number, seconds: number): DriveStep[] {
  return [
    { does: 'drive', seconds, rpm: 1150 + speed * 15, load: 20 + speed * 0.26, speed, rampS: 9 },
    { does: 'overrun', seconds: 8, rpm: 1500, speed: speed * 0.6 },
  ];
}

/** Forty minutes: cold start, town, country road, motorway, town, and the test in the bay. */
const ROAD: readonly DriveStep[] = [
  { does: 'idle', seconds: 40, rpm: 1150 },
  { does: 'idle', seconds: 30, rpm: 950 },
  ...trip(30, 40, 12),
  ...trip(50, 75, 25),
  ...trip(45, 60, 18),
  ...trip(50, 110, 30),
  ...cruise(70, 150),
  ...cruise(80, 390),
  ...cruise(110, 430),
  ...cruise(90, 180),
  ...trip(50, 90, 28),
  ...trip(40, 70, 20),
  ...trip(50, 80, 22),
  { does: 'idle', seconds: 45 },
  { does: 'hold', seconds: 120, rpm: 2300 },
  { does: 'idle', seconds: 25 },
  { does: 'snap', peakRpm: 4100 },
  { does: 'idle', seconds: 12 },
  { does: 'snap', peakRpm: 4000 },
  { does: 'idle', seconds: 15 },
  { does: 'coast', fromRpm: 3400, heldS: 5 },
  { does: 'idle', seconds: 20 },
  { does: 'hold', seconds: 90, rpm: 2100 },
];

/** Closes the forty minutes at idle. */
function fortyMinutes(): DriveStep[] {
  const leftS = 2400 - layDrive(ROAD).durationS;
  return [...ROAD, { does: 'idle', seconds: leftS }];
}

const LAYOUT: TextLayout = {
  delimiter: ',',
  decimal: '.',
  lineEnd: '\n',
  before: [],
  timeHead: 'Elapsed time',
  timeUnit: '',
  units: 'brackets',
  writeTime: (timeS) => clockText(timeS, 1, '.'),
  columns: [
    { head: 'Engine speed', unit: '1/min', digits: 0 },
    { head: 'Vehicle speed', unit: 'km/h', digits: 0 },
    { head: 'O2S B1S1', unit: 'V', digits: 3 },
    { head: 'O2S B1S2', unit: 'V', digits: 3 },
    { head: 'Coolant temperature', unit: '°C', digits: 0 },
    { head: 'Mass air flow', unit: 'g/s', digits: 2 },
    { head: 'Calculated load', unit: '%', digits: 1 },
    { head: 'STFT B1', unit: '%', digits: 1 },
    { head: 'LTFT B1', unit: '%', digits: 1 },
    { head: 'Throttle position', unit: '%', digits: 1 },
  ],
};

/** Commas, elapsed clock times, ten rows a second for forty minutes from a cold start. */
export function roadDriveText(): string {
  const random = createRandom(902);
  const bank = VAN_9.banks.map((one) => ({ ...one, exhaust: { ...one.exhaust, startC: 14 } }));
  const drive = simulateDrive({ ...VAN_9, banks: bank }, layDrive(fortyMinutes()), 14, random.fork(1), 0.005);
  const signals = [RPM, SPEED, frontVolts(1), rearVolts(1), COOLANT, MAF, LOAD, shortTrim(1), longTrim(1), THROTTLE];
  const options = { rateHz: 10, jitterS: 0, sensorHz: 10, otherHz: 5, latencyS: 0.03, lost: 0 };
  return writeText(logDrive(drive, signals, options, random.fork(2)), LAYOUT);
}
