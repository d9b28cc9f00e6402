// Service 01 of SAE J1979 / ISO 15031-5: one row a data item. The formulas were read in two copies of the public table
// of data items and in a decoder's source (the standard itself is sold); what is from memory says so.

import type { Bank, Role } from '../capture/roles.ts';
import { byteAt, type DataItem, type DataValue, type SensorPlacement, wordAt } from './dataItem.ts';
import { oxygenItems } from './oxygenItems.ts';

const percent = (data: Uint8Array) => (byteAt(data, 0) * 100) / 255;
const celsius = (data: Uint8Array) => byteAt(data, 0) - 40;
const trim = (data: Uint8Array) => ((byteAt(data, 0) - 128) * 100) / 128;
const word = (data: Uint8Array) => wordAt(data, 0);

/** One row: a data item with a single value. */
function item(
  pid: number,
  bytes: number,
  key: string,
  name: string,
  unit: string,
  decode: DataValue['decode'],
  role: Role = 'other',
  bank: Bank = null,
  sensor: number | null = null,
): DataItem {
  return { pid, bytes, values: [{ key, name, unit, role, bank, sensor, decode }] };
}

function converterTemperature(pid: number, bank: 1 | 2, sensor: 1 | 2): DataItem {
  const decode = (data: Uint8Array) => wordAt(data, 0) / 10 - 40;
  const name = `Converter temperature, bank ${bank} sensor ${sensor}`;
  return item(pid, 2, `catalystB${bank}S${sensor}`, name, '°C', decode, 'catalystTemp', bank, sensor);
}

/** Data items whose meaning does not depend on the vehicle. Oxygen sensors are in oxygenItems.ts. */
const FIXED_ITEMS: readonly DataItem[] = [
  { pid: 0x01, bytes: 4, values: [] },
  { pid: 0x02, bytes: 2, values: [] },
  {
    pid: 0x03,
    bytes: 2,
    values: [1, 2].map((system) => ({
      key: `fuelSystem${system}`,
      name: `Fuel system ${system} status`,
      unit: '1',
      role: 'fuelStatus',
      bank: system === 1 ? 1 : 2,
      sensor: null,
      decode: (data: Uint8Array) => byteAt(data, system - 1) || null,
    })),
  },
  item(0x04, 1, 'load', 'Calculated load', '%', percent, 'load'),
  item(0x05, 1, 'coolant', 'Coolant temperature', '°C', celsius, 'coolant'),
  item(0x06, 1, 'stftB1', 'Short-term fuel trim, bank 1', '%', trim, 'stft', 1),
  item(0x07, 1, 'ltftB1', 'Long-term fuel trim, bank 1', '%', trim, 'ltft', 1),
  item(0x08, 1, 'stftB2', 'Short-term fuel trim, bank 2', '%', trim, 'stft', 2),
  item(0x09, 1, 'ltftB2', 'Long-term fuel trim, bank 2', '%', trim, 'ltft', 2),
  item(0x0a, 1, 'fuelPressure', 'Fuel pressure', 'kPa', (data) => byteAt(data, 0) * 3),
  item(0x0b, 1, 'manifoldPressure', 'Intake manifold pressure', 'kPa', (data) => byteAt(data, 0)),
  item(0x0c, 2, 'rpm', 'Engine speed', '1/min', (data) => wordAt(data, 0) / 4, 'rpm'),
  item(0x0d, 1, 'speed', 'Vehicle speed', 'km/h', (data) => byteAt(data, 0), 'speed'),
  item(0x0e, 1, 'ignitionAdvance', 'Ignition advance', '°', (data) => byteAt(data, 0) / 2 - 64),
  item(0x0f, 1, 'intakeAir', 'Intake air temperature', '°C', celsius, 'intakeAir'),
  item(0x10, 2, 'maf', 'Mass air flow', 'g/s', (data) => wordAt(data, 0) / 100, 'maf'),
  item(0x11, 1, 'throttle', 'Throttle position', '%', percent, 'throttle'),
  { pid: 0x12, bytes: 1, values: [] },
  { pid: 0x13, bytes: 1, values: [] },
  { pid: 0x1c, bytes: 1, values: [] },
  { pid: 0x1d, bytes: 1, values: [] },
  { pid: 0x1e, bytes: 1, values: [] },
  item(0x1f, 2, 'runTime', 'Time since engine start', 's', word),
  item(0x21, 2, 'distanceMil', 'Distance with warning lamp on', 'km', word),
  // 22, 23, 2C to 33: widths and formulas from memory of the standard.
  item(0x22, 2, 'railPressureRelative', 'Fuel rail pressure, relative', 'kPa', (data) => wordAt(data, 0) * 0.079),
  item(0x23, 2, 'railPressure', 'Fuel rail pressure', 'kPa', (data) => wordAt(data, 0) * 10),
  item(0x2c, 1, 'egrCommanded', 'Commanded exhaust gas recirculation', '%', percent),
  item(0x2d, 1, 'egrError', 'Exhaust gas recirculation error', '%', trim),
  item(0x2e, 1, 'purge', 'Commanded evaporative purge', '%', percent),
  item(0x2f, 1, 'fuelLevel', 'Fuel level', '%', percent),
  item(0x30, 1, 'warmUps', 'Warm-ups since codes cleared', '1', (data) => byteAt(data, 0)),
  item(0x31, 2, 'distanceSinceClear', 'Distance since codes cleared', 'km', word),
  { pid: 0x32, bytes: 2, values: [] },
  item(0x33, 1, 'barometer', 'Barometric pressure', 'kPa', (data) => byteAt(data, 0)),
  converterTemperature(0x3c, 1, 1),
  converterTemperature(0x3d, 2, 1),
  converterTemperature(0x3e, 1, 2),
  converterTemperature(0x3f, 2, 2),
  { pid: 0x41, bytes: 4, values: [] },
  // 42, 43, 45 to 4C: from memory of the standard.
  item(0x42, 2, 'moduleVoltage', 'Control module voltage', 'V', (data) => wordAt(data, 0) / 1000),
  item(0x43, 2, 'absoluteLoad', 'Absolute load', '%', (data) => (wordAt(data, 0) * 100) / 255),
  item(0x44, 2, 'lambdaCommanded', 'Commanded lambda', '1', (data) => (wordAt(data, 0) * 2) / 65536),
  item(0x45, 1, 'throttleRelative', 'Relative throttle position', '%', percent),
  item(0x46, 1, 'ambient', 'Ambient air temperature', '°C', celsius),
  item(0x47, 1, 'throttleB', 'Throttle position B', '%', percent),
  item(0x49, 1, 'pedalD', 'Accelerator pedal position D', '%', percent),
  item(0x4a, 1, 'pedalE', 'Accelerator pedal position E', '%', percent),
  item(0x4c, 1, 'throttleCommanded', 'Commanded throttle', '%', percent),
  item(0x4d, 2, 'minutesMil', 'Time with warning lamp on', 'min', word),
  item(0x4e, 2, 'minutesSinceClear', 'Time since codes cleared', 'min', word),
  { pid: 0x4f, bytes: 4, values: [] },
];

/** The items that say which others a vehicle has: 00, 20, 40 ... */
const SUPPORT_ITEMS: readonly DataItem[] = [0x00, 0x20, 0x40, 0x60, 0x80, 0xa0, 0xc0].map((pid) => ({
  pid,
  bytes: 4,
  values: [],
}));

/**
 * All data items by number, for a vehicle whose oxygen sensors are placed as said. A vehicle supports 13 or 1D, never
 * both (from memory of the standard); where neither was seen, 'twoBanks' is the usual one.
 */
export function dataItems(placement: SensorPlacement): ReadonlyMap<number, DataItem> {
  const all = [...SUPPORT_ITEMS, ...FIXED_ITEMS, ...oxygenItems(placement)];
  return new Map(all.map((entry) => [entry.pid, entry]));
}
