import type { DriveStep } from '../driveScript.ts';
import { layDrive } from '../driveScript.ts';
import { recordAnalogue } from '../instruments/analogue.ts';
import { type TextLayout, writeText } from '../layoutText/textLayout.ts';
import { createRandom } from '../random.ts';
import { frontVolts, RPM, rearVolts } from '../signals.ts';
import { simulateDrive } from '../simulate.ts';
import { VAN_17 } from './vans.ts';

const HOLD: readonly DriveStep[] = [
  { does: 'hold', seconds: 92, rpm: 2250 },
  { does: 'idle', seconds: 7 },
  { does: 'snap', peakRpm: 4000 },
  { does: 'idle', seconds: 17.35 - 3.6 },
];

const millivolts = (volts: number) => (volts * 1000).toFixed(0);

const LAYOUT: TextLayout = {
  delimiter: ';',
  decimal: '.',
  lineEnd: '\n',
  before: ['Invented analogue recording, made by the simulation of Tailtrace; clamp on cylinder 1 for the speed'],
  timeHead: 'Time',
  timeUnit: 'ms',
  units: 'brackets',
  writeTime: (timeS) => (timeS * 1000).toFixed(0),
  columns: [
    { head: 'Front O2 sensor B1S1', unit: 'mV', digits: 0, write: millivolts },
    { head: 'Rear O2 sensor B1S2', unit: 'mV', digits: 0, write: millivolts },
    { head: 'Engine speed', unit: '1/min', digits: 0 },
  ],
};

/** Semicolons, whole milliseconds and millivolts from a 10-bit converter, 1000 rows a second for two minutes. */
export function analogueHoldText(): string {
  const random = createRandom(1701);
  const bank = VAN_17.banks.map((one) => ({ ...one, exhaust: { ...one.exhaust, startC: 520 } }));
  const steps = [...HOLD];
  const leftS = 120 - layDrive(steps).durationS;
  const script = layDrive([...steps, { does: 'idle', seconds: leftS }]);
  const drive = simulateDrive({ ...VAN_17, banks: bank }, script, 89, random.fork(1), 0.001);
  const options = { rateHz: 1000, stepV: 5 / 1023, noiseV: 0.006, spikesPerS: 1.5, spikeV: 0.08 };
  const speed = { ...RPM, step: 10, noise: 4 };
  return writeText(recordAnalogue(drive, [frontVolts(1), rearVolts(1), speed], options, random.fork(2)), LAYOUT);
}
