import { layDrive } from '../driveScript.ts';
import { pollDrive } from '../instruments/polled.ts';
import { type TextLayout, writeText } from '../layoutText/textLayout.ts';
import { createRandom } from '../random.ts';
import { COOLANT, frontVolts, fuelStatus, longTrim, MAF, RPM, rearVolts, SPEED, shortTrim } from '../signals.ts';
import { simulateDrive } from '../simulate.ts';
import { LONGER_BAY_TEST } from './bayTest.ts';
import { VAN_21 } from './vans.ts';

const millivolts = (volts: number) => (volts * 1000).toFixed(0);

const LAYOUT: TextLayout = {
  delimiter: '\t',
  decimal: '.',
  lineEnd: '\n',
  before: [],
  timeHead: 'Time',
  timeUnit: 'ms',
  units: 'brackets',
  writeTime: (timeS) => (timeS * 1000).toFixed(0),
  columns: [
    { head: 'B1S1 O2 voltage', unit: 'mV', digits: 0, write: millivolts },
    { head: 'B1S2 O2 voltage', unit: 'mV', digits: 0, write: millivolts },
    { head: 'Engine speed', unit: '1/min', digits: 0 },
    { head: 'Coolant', unit: '°C', digits: 0 },
    { head: 'Air flow', unit: 'g/s', digits: 2 },
    { head: 'Short fuel trim B1', unit: '%', digits: 1 },
    { head: 'Long fuel trim B1', unit: '%', digits: 1 },
    { head: 'Fuel system B1', unit: '', digits: 0 },
    { head: 'Road speed', unit: 'km/h', digits: 0 },
  ],
};

/** Tabs, whole milliseconds, millivolts; a quick data list of about twelve rows a second. */
export function vanTrapText(): string {
  const random = createRandom(2101);
  const drive = simulateDrive(VAN_21, layDrive(LONGER_BAY_TEST), 72, random.fork(1), 0.005);
  const signals = [frontVolts(1), rearVolts(1), RPM, COOLANT, MAF, shortTrim(1), longTrim(1), fuelStatus(1), SPEED];
  const options = { answersPerS: 110, jitter: 0.2, latencyS: 0.02, lost: 0, pauses: 0, pauseS: 0 };
  return writeText(pollDrive(drive, signals, options, random.fork(2)), LAYOUT);
}
