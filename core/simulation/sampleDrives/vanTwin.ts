import { layDrive } from '../driveScript.ts';
import { pollDrive } from '../instruments/polled.ts';
import { type TextLayout, writeText } from '../layoutText/textLayout.ts';
import { createRandom } from '../random.ts';
import {
  brickTemperature,
  COOLANT,
  frontVolts,
  fuelStatus,
  INTAKE_AIR,
  LOAD,
  longTrim,
  MAF,
  RPM,
  rearVolts,
  SPEED,
  shortTrim,
  THROTTLE,
} from '../signals.ts';
import { simulateDrive } from '../simulate.ts';
import { LONGER_BAY_TEST } from './bayTest.ts';
import { VAN_9 } from './vans.ts';

const fahrenheit = (celsius: number) => (celsius * 1.8 + 32).toFixed(0);
const miles = (kilometres: number) => (kilometres / 1.609344).toFixed(0);

const LAYOUT: TextLayout = {
  delimiter: ',',
  decimal: '.',
  lineEnd: '\r\n',
  before: ['Data list of an invented van made by the simulation of Tailtrace', 'Van 9, warm, in the bay', ''],
  timeHead: 'Time',
  timeUnit: 's',
  units: 'brackets',
  writeTime: (timeS) => timeS.toFixed(3),
  columns: [
    { head: 'Engine speed', unit: '1/min', digits: 0 },
    { head: 'Vehicle speed', unit: 'mph', digits: 0, write: miles },
    { head: 'Coolant temperature', unit: '°F', digits: 0, write: fahrenheit },
    { head: 'Intake air temperature', unit: '°F', digits: 0, write: fahrenheit },
    { head: 'Calculated load', unit: '%', digits: 1 },
    { head: 'Throttle position', unit: '%', digits: 1 },
    { head: 'Mass air flow', unit: 'g/s', digits: 2 },
    { head: 'Fuel system status bank 1', unit: '', digits: 0, write: statusWords },
    { head: 'Short term fuel trim bank 1', unit: '%', digits: 1 },
    { head: 'Long term fuel trim bank 1', unit: '%', digits: 1 },
    { head: 'Oxygen sensor bank 1 sensor 1', unit: 'V', digits: 3 },
    { head: 'Oxygen sensor bank 1 sensor 2', unit: 'V', digits: 3 },
    { head: 'Converter temperature bank 1', unit: '°F', digits: 0, write: fahrenheit },
  ],
};

function statusWords(code: number): string {
  return code === 2 ? 'closed loop' : code === 1 ? 'open loop, cold' : 'open loop';
}

/** Commas after free text, units in brackets, about three rows a second at irregular times, some cells empty. */
export function vanTwinText(): string {
  const random = createRandom(901);
  const drive = simulateDrive(VAN_9, layDrive(LONGER_BAY_TEST), 74, random.fork(1), 0.005);
  const signals = [
    RPM,
    SPEED,
    COOLANT,
    INTAKE_AIR,
    LOAD,
    THROTTLE,
    MAF,
    fuelStatus(1),
    shortTrim(1),
    longTrim(1),
    frontVolts(1),
    rearVolts(1),
    brickTemperature(1),
  ];
  const options = { answersPerS: 41, jitter: 0.3, latencyS: 0.06, lost: 0.001, pauses: 0.02, pauseS: 0.5 };
  return writeText(pollDrive(drive, signals, options, random.fork(2)), LAYOUT);
}
