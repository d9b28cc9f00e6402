// Texts as measuring computers, statistics programs and printers write them, where a value may end up in the wrong place
// without anybody seeing it. The values are invented; what they must be is said in each test.

import { describe, expect, it } from 'vitest';
import type { Capture } from '../../../../core/capture/capture.ts';
import { readText, refusalOf } from '../../../support/readText.ts';

const HEADER = 'Time (s),RPM,O2S11 (V),O2S12 (V)';
const row = (i: number) => `${(i / 10).toFixed(1)},${2200 + i},0.${100 + (i % 800)},0.6${i % 10}`;
const rows = (from: number, to: number) => Array.from({ length: to - from }, (_, k) => `${row(from + k)}\n`).join('');
const roles = ({ channels }: Capture) => channels.map(({ role, bank, sensor }) => [role, bank, sensor].join(' '));
const FOUND = ['rpm  ', 'upstreamO2 1 1', 'downstreamO2 1 2'];
const valuesOf = ({ channels }: Capture, role: string) => [
  ...(channels.find((one) => one.role === role)?.values ?? []),
];
const told = ({ warnings }: Capture) => warnings.filter(({ id }) => id !== 'channelNeverChanges');

describe('another header among the data', () => {
  it('with the same names in other places ends what is read: its values belong to other channels', async () => {
    const swapped = 'Time (s),RPM,O2S12 (V),O2S11 (V)\n10.0,2300,0.6,0.2\n10.1,2301,0.6,0.2\n';
    const { capture } = await readText(`${HEADER}\n${rows(0, 100)}${swapped}`);
    expect(capture.rows).toBe(100);
    expect(told(capture)).toMatchObject([{ id: 'truncated', row: 102 }]);
  });

  it('of another table does too', async () => {
    const other = 'Time (s),Coolant (°C),Intake air (°C),MAF (g/s)\n0.0,88,25,12\n0.1,88,25,12\n';
    const { capture } = await readText(`${HEADER}\n${rows(0, 100)}${other}`);
    expect(capture.rows).toBe(100);
    expect(told(capture)).toMatchObject([{ id: 'truncated', row: 102 }]);
  });

  it('that is the same, on each page, is passed over with the page break', async () => {
    const page = (from: number) => `\f\n${HEADER}\n${rows(from, from + 50)}`;
    const { capture } = await readText(page(0) + page(50) + page(100));
    expect(capture.rows).toBe(150);
    expect(told(capture)).toMatchObject([{ id: 'headerRepeated', count: 2 }]);
  });

  it('that has a comma inside brackets without quotes is the same all the same', async () => {
    const header = 'Time (s),O2 voltage (Bank 1, Sensor 1),RPM';
    const part = (from: number) =>
      `${header}\n${Array.from({ length: 50 }, (_, k) => `${(from + k) / 10},0.4${k % 10},2200\n`).join('')}`;
    const { capture } = await readText(part(0) + part(50));
    expect(capture.rows).toBe(100);
    expect(told(capture)).toMatchObject([{ id: 'headerRepeated', count: 1 }]);
  });

  it('with another unit ends what is read: its values are not those above', async () => {
    const other = `Time (s),RPM,O2S11 (mV),O2S12 (V)\n${rows(100, 150)}`;
    const { capture } = await readText(`${HEADER}\n${rows(0, 100)}${other}`);
    expect(capture.rows).toBe(100);
    expect(told(capture)).toMatchObject([{ id: 'truncated', row: 102 }]);
  });

  it('a remark of several words is no header', async () => {
    const { capture } = await readText(
      `${HEADER}\n${rows(0, 50)}engine warm, lambda steady, rpm held\n${rows(50, 100)}`,
    );
    expect(capture.rows).toBe(100);
    expect(told(capture)).toMatchObject([{ id: 'rowsSkipped', count: 1, row: 52 }]);
  });
});

describe('rows that hold no signs to be seen', () => {
  it('the end mark of old systems is no broken row', async () => {
    expect(told((await readText(`${HEADER}\n${rows(0, 100)}\x1a`)).capture)).toEqual([]);
  });

  it('zero bytes where power failed are told as such', async () => {
    const { capture } = await readText(`${HEADER}\n${rows(0, 100)}${'\0'.repeat(30)}\n${rows(100, 200)}`);
    expect(capture.rows).toBe(200);
    expect(told(capture)).toMatchObject([{ id: 'rowsSkipped', row: 102, count: 1 }]);
    expect(told(capture)[0]?.detail).toContain('zero bytes');
  });
});

describe('columns that blanks part', () => {
  const lines = (row: (i: number) => string) => Array.from({ length: 60 }, (_, i) => `${row(i)}\n`).join('');

  it('a value that is missing never moves those behind it into its place', async () => {
    const front = (i: number) => (i % 3 === 0 ? '       ' : `  0.${100 + i}`);
    const { capture } = await readText(
      `Time[s]  n[rpm]  O2_B1S1[V]  O2_B1S2[V]\n${lines((i) => `${(i / 10).toFixed(1)}  ${2200 + i}${front(i)}  0.6${i % 10}`)}`,
    );
    expect(Math.max(...valuesOf(capture, 'upstreamO2'))).toBeLessThan(0.2);
    expect(Math.min(...valuesOf(capture, 'downstreamO2'))).toBeGreaterThan(0.59);
    expect(capture.rows).toBe(40);
    expect(told(capture)).toMatchObject([{ id: 'rowsSkipped', count: 20 }]);
  });

  it('more words than columns name none of them', async () => {
    const { capture, question } = await readText(
      `Time Engine speed O2 B1S1 O2 B1S2\n${lines((i) => `${(i / 10).toFixed(1)} ${2200 + i} 0.${100 + i} 0.6${i % 10}`)}`,
    );
    expect(capture.channels.map(({ role }) => role)).toEqual(['other', 'other', 'other']);
    expect(question).not.toBeNull();
  });

  it('units in brackets belong to the word before them', async () => {
    const { capture } = await readText(
      `Time (s) RPM (1/min) O2S11 (V) O2S12 (V)\n${lines((i) => `${(i / 10).toFixed(1)} ${2200 + i} 0.${100 + i} 0.6${i % 10}`)}`,
    );
    expect(roles(capture)).toEqual(FOUND);
  });
});

describe('what stands between names and values', () => {
  it.each([
    ['a row of types', 'float,uint16,float,float\n', 0],
    ['a ruled line', '--------,-----,------,------\n', 0],
    ['extremes of each column', 'min,0,0,0\nmax,8000,1.275,1.275\n', 1],
  ])('%s', async (_, between, warnings) => {
    const { capture } = await readText(`${HEADER}\n${between}${rows(0, 100)}`);
    expect(roles(capture)).toEqual(FOUND);
    expect(capture.rows).toBe(100);
    expect(told(capture)).toHaveLength(warnings);
  });
});

describe('names and columns', () => {
  it('a table of a statistics program has no name over its numbers of rows', async () => {
    const lines = Array.from({ length: 60 }, (_, i) => `"${i + 1}",${row(i)}\n`).join('');
    const { capture } = await readText(`"Time","RPM","O2S11","O2S12"\n${lines}`);
    expect(capture.durationS).toBeCloseTo(5.9, 9);
    expect(roles(capture)).toEqual(['other  ', ...FOUND]);
  });

  it('fewer names than cells are told of', async () => {
    const lines = Array.from({ length: 60 }, (_, i) => `${row(i)},${i % 7},${i % 5}\n`).join('');
    const { capture } = await readText(`${HEADER}\n${lines}`);
    expect(told(capture)).toMatchObject([{ id: 'other', count: 2 }]);
  });

  it('columns of words are told of with some of their words', async () => {
    const lines = Array.from({ length: 60 }, (_, i) => `${row(i)},${i < 30 ? 'van' : 'car'}\n`).join('');
    const { capture } = await readText(`${HEADER},Vehicle\n${lines}`);
    expect(told(capture)).toMatchObject([{ id: 'unreadableCells', count: 1 }]);
    expect(told(capture)[0]?.detail).toContain('“Vehicle” (“van”, “car”)');
  });

  it('a file whose channels stand in rows is refused with what to do', async () => {
    const cells = (value: (i: number) => string) => Array.from({ length: 60 }, (_, i) => value(i)).join(',');
    const problem = await refusalOf(
      `Time (s),${cells((i) => String(i / 10))}\nRPM,${cells((i) => String(2200 + i))}\nO2S11 (V),${cells(() => '0.45')}\n`,
    );
    expect(problem.id).toBe('turned');
  });
});

describe('one row a value', () => {
  const channels = [
    ['Engine RPM', 'rpm', (i: number) => 2200 + i],
    ['Coolant', '°F', () => 212],
    ['O2 voltage B1S1', 'mV', () => 450],
  ] as const;
  const long = (line: (time: string, name: string, value: number, unit: string) => string) =>
    Array.from({ length: 300 }, (_, i) => {
      const [name, unit, value] = channels[i % 3] ?? channels[0];
      return line((i / 30).toFixed(3), name, value(i), unit);
    }).join('');

  it('units behind the values may change from row to row', async () => {
    const { capture } = await readText(`Time,Name,Value\n${long((t, n, v, u) => `${t},${n},${v} ${u}\n`)}`);
    expect(roles(capture)).toEqual(['rpm  ', 'coolant  ', 'upstreamO2 1 1']);
    expect(new Set(valuesOf(capture, 'coolant'))).toEqual(new Set([100]));
    expect(valuesOf(capture, 'upstreamO2')[0]).toBeCloseTo(0.45, 6);
    expect(valuesOf(capture, 'rpm').slice(0, 2)).toEqual([2200, 2203]);
  });

  it('a column of other words is no unit, and does not hide the one in the name', async () => {
    const { capture } = await readText(
      `device,time,parameter,reading\n${long((t, n, v, u) => `dev-1,${t},${n} [${u}],${v}\n`)}`,
    );
    expect(new Set(valuesOf(capture, 'coolant'))).toEqual(new Set([100]));
    expect(valuesOf(capture, 'upstreamO2')[0]).toBeCloseTo(0.45, 6);
  });
});

describe('a rate in the heading', () => {
  it.each(['SampleRate,100.0,100.0', 'Sample Interval,1.0E-02', 'Sampling rate: 100 Hz'])('%s', async (line) => {
    const lines = Array.from({ length: 100 }, (_, i) => `0.${100 + i},0.6${i % 10}\n`).join('');
    const { capture } = await readText(`${line}\n\nO2S11 (V),O2S12 (V)\n${lines}`);
    expect(capture.channels[0]?.facts.medianRateHz).toBeCloseTo(100, 6);
  });
});
