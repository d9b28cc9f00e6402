// SAE J1979 / ISO 15031-5 formulas against bytes whose values were worked in the standard's own terms and, where a row
// says so, decoded by an independent decoder (checks 1.01 to 1.35). Table: values/obd-decode.csv.

import { readFileSync } from 'node:fs';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { dataItems } from '../../core/diagnostics/dataItems.ts';
import { monitorStatus } from '../../core/diagnostics/monitorStatus.ts';
import { readData, supportedPids } from '../../core/diagnostics/readData.ts';
import { testResultsIn } from '../../core/diagnostics/testResults.ts';
import { troubleCodesIn } from '../../core/diagnostics/troubleCode.ts';
import { type Loop, loopOf } from '../../core/windows/fuelStatusCode.ts';

interface Row {
  response_hex: string;
  field: string;
  expected: string;
  unit: string;
  tolerance: string;
}

const table = readFileSync(new URL('./values/obd-decode.csv', import.meta.url), 'utf8');
const rows = Papa.parse<Row>(table, { header: true, skipEmptyLines: true }).data;

/** Names of the table that differ from the program's keys. */
const KEYS: Record<string, RegExp> = {
  volts: /^(o2|volts)B\dS\d$/,
  stft: /^o2TrimB\dS\d$/,
  lambda: /^lambdaB\dS\d$/,
  current: /^currentB\dS\d$/,
};

function bytes(hex: string): Uint8Array {
  return Uint8Array.from(hex.match(/../g) ?? [], (pair) => Number.parseInt(pair, 16));
}

/** What the table calls the states of a fuel system. */
const LOOP_IDS: Readonly<Record<Loop, string | null>> = {
  openCold: 'openLoopCold',
  closed: 'closedLoop',
  openByLoadOrFuelCut: 'openLoopLoadOrFuelCut',
  openByFault: 'openLoopFault',
  closedWithFault: 'closedLoopWithSensorFault',
  unknown: null,
};

/** What the program reads for a row of the table, as the table would print it; numbers stay numbers. */
function read(row: Row): number | string | null {
  const message = bytes(row.response_hex);
  const found = readData(message, dataItems('twoBanks'));
  const first = found.items[0]?.data ?? new Uint8Array();
  switch (row.field) {
    case 'mil':
      return monitorStatus(first)?.lampOn ? 1 : 0;
    case 'dtcCount':
      return monitorStatus(first)?.codes ?? null;
    case 'ignition':
      return monitorStatus(first)?.ignition ?? null;
    case 'supported':
      return monitorStatus(first)?.supported.join(' ') ?? null;
    case 'incomplete':
      return monitorStatus(first)?.incomplete.join(' ') ?? null;
    case 'fuelSystem1':
    case 'fuelSystem2':
      return LOOP_IDS[loopOf(found.values.find((value) => value.of.key === row.field)?.value ?? 0)];
    case 'pids':
      return supportedPids(0, first)
        .map((pid) => pid.toString(16).toUpperCase().padStart(2, '0'))
        .join(' ');
    case 'o2Present':
      return presentSensors(found.items[0]?.pid ?? 0, first[0] ?? 0);
    case 'dtcs':
    case 'pendingDtcs':
      return troubleCodesIn(message).join(' ');
    default:
      return readNumber(row, message, found.values);
  }
}

function presentSensors(pid: number, declared: number): string {
  const placement = pid === 0x1d ? 'fourBanks' : 'twoBanks';
  const items = dataItems(placement);
  const names: string[] = [];
  for (let bit = 0; bit < 8; bit++) {
    const key = items.get(0x14 + bit)?.values[0]?.key ?? '';
    if (declared & (1 << bit)) names.push(key.replace('o2', ''));
  }
  return names.join(' ');
}

function readNumber(row: Row, message: Uint8Array, values: ReturnType<typeof readData>['values']) {
  const [test] = testResultsIn(message);
  if (test && row.field.endsWith('value')) return test.value;
  if (test && row.field === 'max') return test.most;
  if (test && row.field === 'min max') return `${test.least} ${test.most}`;
  const wanted = KEYS[row.field];
  const hit = values.find(({ of }) => (wanted ? wanted.test(of.key) : of.key === row.field));
  return hit ? hit.value : null;
}

describe('diagnostic data items (SAE J1979)', () => {
  it('has a table to check against', () => expect(rows.length).toBeGreaterThan(60));

  it.each(rows)('$response_hex $field is $expected $unit', (row) => {
    const value = read(row);
    if (row.expected === 'none') expect(value).toBeNull();
    else if (typeof value === 'number') {
      expect(Math.abs(value - Number(row.expected))).toBeLessThanOrEqual(Number(row.tolerance) + 1e-12);
    } else expect(value).toBe(row.expected);
  });

  it('reads several items of one answer (ISO 15765-4 allows six)', () => {
    const found = readData(bytes('410C1AF8057B111A'), dataItems('twoBanks'));
    expect(found.values.map(({ of, value }) => [of.role, Math.round(value * 1000) / 1000])).toEqual([
      ['rpm', 1726],
      ['coolant', 83],
      ['throttle', 10.196],
    ]);
  });

  it('stops at an item it does not know and says which', () => {
    expect(readData(bytes('41057BF01122'), dataItems('twoBanks'))).toMatchObject({ unknownPid: 0xf0, cut: false });
  });

  it('leaves out an item that is cut short and says so', () => {
    const found = readData(bytes('41057B0C1A'), dataItems('twoBanks'));
    expect(found.values.map(({ of }) => of.key)).toEqual(['coolant']);
    expect(found.cut).toBe(true);
  });
});
