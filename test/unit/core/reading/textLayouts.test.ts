// Texts as instruments write them: what is found in each without being told.

import { describe, expect, it } from 'vitest';
import type { Capture } from '../../../../core/capture/capture.ts';
import { timeAt } from '../../../../core/capture/timeBase.ts';
import { readText, rowsOf } from '../../../support/readText.ts';

const tenth = (i: number) => (i / 10).toFixed(1);
const comma = (text: string) => text.replace('.', ',');

/** Role with its place, unit, and the range of the values. */
function found({ channels }: Capture): string[] {
  return channels.map(({ role, bank, sensor, unit, facts }) =>
    [role, bank, sensor, unit, `${facts.min}..${facts.max}`].filter((part) => part !== null).join(' '),
  );
}

const RPM = 'rpm 1/min 2200..2259';
const FRONT = 'upstreamO2 1 1 V 0.05..0.848';

/** Name of the case, text, sentence about the layout. All hold the same 60 rows at 10 Hz. */
const CASES: readonly (readonly [string, string, string])[] = [
  [
    'free text before the header, and a heading with a comma that nobody quoted',
    `Recorder export\nVehicle: van, 12345\nDate: 2024-03-01, 12:00\n\nTime (sec),Engine RPM [RPM],O2 Voltage (Bank 1, Sensor 1) [V]\n${rowsOf(60, (i, v) => `${tenth(i)},${2200 + i},${v}`)}`,
    'Text, commas, header in row 5, times in s',
  ],
  [
    'semicolons and decimal commas',
    `Zeit [s];Drehzahl;Lambdasonde vor Kat (V)\n${rowsOf(60, (i, v) => `${comma(tenth(i))};${2200 + i};${comma(v)}`)}`,
    'Text, semicolons, decimal commas, header in row 1, times in s',
  ],
  [
    'thousands separators beside decimal commas',
    `Zeit [s];Drehzahl;Lambdasonde vor Kat (V)\n${rowsOf(60, (i, v) => `${comma(tenth(i))};2.${200 + i};${comma(v)}`)}`,
    'Text, semicolons, decimal commas, header in row 1, times in s',
  ],
  [
    'thousands separators in quoted cells',
    `"Time (s)","Engine speed","O2 front (V)"\n${rowsOf(60, (i, v) => `"${tenth(i)}","2,${200 + i}","${v}"`)}`,
    'Text, commas, header in row 1, times in s',
  ],
  [
    'decimal commas in quoted cells between commas',
    `"Zeit (s)","Drehzahl","B1S1 (V)"\n${rowsOf(60, (i, v) => `"${comma(tenth(i))}","${2200 + i}","${comma(v)}"`)}`,
    'Text, commas, decimal commas, header in row 1, times in s',
  ],
  [
    'bars',
    `Time (s)|RPM|O2 B1S1\n${rowsOf(60, (i, v) => `${tenth(i)}|${2200 + i}|${v}`)}`,
    'Text, bars, header in row 1, times in s',
  ],
  [
    'tabs',
    `Time (s)\tRPM\tO2 B1S1\n${rowsOf(60, (i, v) => `${tenth(i)}\t${2200 + i}\t${v}`)}`,
    'Text, tabs, header in row 1, times in s',
  ],
  [
    'blanks in columns',
    `Time    RPM    O2_B1S1\n${rowsOf(60, (i, v) => `  ${tenth(i).padStart(6)}  ${2200 + i}   ${v}`)}`,
    'Text, blanks, header in row 1, times in s',
  ],
  [
    'blanks, with headings of two words',
    `Time (s)   Engine RPM   O2 B1S1 (V)\n${rowsOf(60, (i, v) => `${tenth(i)}   ${2200 + i}   ${v}`)}`,
    'Text, blanks, header in row 1, times in s',
  ],
  [
    'units glued to the numbers',
    `TIME,RPM,O2 B1S1\n${rowsOf(60, (i, v) => `${tenth(i)}s,${2200 + i}RPM,${v}V`)}`,
    'Text, commas, header in row 1, times in s',
  ],
  [
    'a row of units',
    `Time,RPM,O2 B1S1\ns,1/min,V\n${rowsOf(60, (i, v) => `${tenth(i)},${2200 + i},${v}`)}`,
    'Text, commas, header in row 1, units in row 2, times in s',
  ],
  [
    'units in brackets under the header',
    `Time;RPM;O2 B1S1\n[ms];[rpm];[mV]\n${rowsOf(60, (i, v) => `${i * 100};${2200 + i};${(Number(v) * 1000).toFixed(0)}`)}`,
    'Text, semicolons, header in row 1, units in row 2, times in ms',
  ],
  [
    'units in the cells',
    `Time,RPM,O2S11\n${rowsOf(60, (i, v) => `${tenth(i)} s,${2200 + i} rpm,${v} V`)}`,
    'Text, commas, header in row 1, times in s',
  ],
  [
    'two header rows, with the upper one standing over two columns',
    `,Engine,Bank 1\nTime,Speed,Sensor 1\ns,1/min,V\n${rowsOf(60, (i, v) => `${tenth(i)},${2200 + i},${v}`)}`,
    'Text, commas, header in rows 1 and 2, units in row 3, times in s',
  ],
  [
    'trailing separators',
    `Time (s);RPM;O2 B1S1;\n${rowsOf(60, (i, v) => `${tenth(i)};${2200 + i};${v};`)}`,
    'Text, semicolons, header in row 1, times in s',
  ],
  [
    'a separator told by the file',
    `sep=;\nTime (s);RPM;O2 B1S1\n${rowsOf(60, (i, v) => `${tenth(i)};${2200 + i};${v}`)}`,
    'Text, semicolons, header in row 2, times in s',
  ],
  [
    'exponents',
    `Time (s),RPM,O2 B1S1\n${rowsOf(60, (i, v) => `${(i / 10).toExponential(3)},${(2200 + i).toExponential(4)},${Number(v).toExponential(3)}`)}`,
    'Text, commas, header in row 1, times in s',
  ],
  [
    'CR alone at the line ends',
    `Time (s),RPM,O2 B1S1\r${rowsOf(60, (i, v) => `${tenth(i)},${2200 + i},${v}`, '\r')}`,
    'Text, commas, header in row 1, times in s',
  ],
  [
    'blanks after the commas',
    `Time (s), RPM, O2 B1S1\n${rowsOf(60, (i, v) => `${tenth(i)}, ${2200 + i}, ${v}`)}`,
    'Text, commas, header in row 1, times in s',
  ],
];

describe('a text of one row a moment', () => {
  it.each(CASES)('%s', async (_, text, words) => {
    const { capture, question } = await readText(text);
    expect(capture.layout.words).toBe(words);
    expect(capture.rows).toBe(60);
    expect(capture.durationS).toBeCloseTo(5.9, 9);
    expect(capture.channels.every(({ time }) => time.kind === 'regular')).toBe(true);
    const own = found(capture);
    expect(own[own.length - 1]).toBe(FRONT);
    expect(own[own.length - 2]?.replace('other 1/min', 'rpm 1/min')).toBe(RPM);
    expect(question).toBeNull();
  });

  it.each([
    ['UTF-8 with a mark', (text: string) => new TextEncoder().encode(`\uFEFF${text}`)],
    ['UTF-16, low byte first', (text: string) => new Uint8Array(Buffer.from(`\uFEFF${text}`, 'utf16le'))],
    ['UTF-16, high byte first', (text: string) => new Uint8Array(Buffer.from(`\uFEFF${text}`, 'utf16le').swap16())],
    ['UTF-16 without a mark', (text: string) => new Uint8Array(Buffer.from(text, 'utf16le'))],
    ['Windows-1252', (text: string) => new Uint8Array(Buffer.from(text, 'latin1'))],
  ])('%s', async (_, encode) => {
    const text = `Temps (s);régime moteur (tr/min);température d'eau (°C)\n${rowsOf(60, (i) => `${tenth(i)};${2200 + i};${80 + (i % 3)}`)}`;
    const { capture } = await readText(encode(text));
    expect(found(capture)).toEqual([RPM, 'coolant °C 80..82']);
    expect(capture.channels[0]?.name).toBe('régime moteur (tr/min)');
  });

  it('tells an odd byte at the end of UTF-16', async () => {
    const text = `Time (s);RPM\n${rowsOf(20, (i) => `${tenth(i)};${2200 + i}`)}0.9;22`;
    const { capture } = await readText(Uint8Array.of(...Buffer.from(text, 'utf16le'), 0x30));
    expect(capture.warnings.map(({ id }) => id)).toSatisfy(
      (ids: string[]) => ids.includes('unfinished') || ids.includes('unreadableCells'),
    );
  });

  it('reads units of other countries into those of the program', async () => {
    const text = `Time,Engine Speed,Coolant Temp,Vehicle Speed,MAF,B1S1\nsec,rpm,°F,mph,lb/min,mV\n${rowsOf(60, (i, v) => `${tenth(i)},2200,${190 + (i % 2)},35,0.5,${(Number(v) * 1000).toFixed(0)}`)}`;
    const { capture } = await readText(text);
    expect(found(capture)).toEqual([
      'rpm 1/min 2200..2200',
      'coolant °C 87.77778..88.33334',
      'speed km/h 56.32704..56.32704',
      'maf g/s 3.779936..3.779936',
      FRONT,
    ]);
  });

  it('keeps the status of the fuel system as the codes of the standard', async () => {
    const text = `Time (s),RPM,Fuel Sys\n${rowsOf(40, (i) => `${tenth(i)},800,${['OL', 'CL', 'OL-Drive', 'OL-Fault', 'CL-Fault'][Math.floor(i / 8)]}`)}`;
    const { capture } = await readText(text);
    const [, status] = capture.channels;
    expect(status?.role).toBe('fuelStatus');
    expect([0, 8, 16, 24, 32].map((i) => status?.values[i])).toEqual([1, 2, 4, 8, 16]);
  });

  it('gives a channel that is polled less often than the rows its own times', async () => {
    const text = `Time (s),rpm,B1S1 V\n${rowsOf(60, (i, v) => `${tenth(i)},${i % 3 === 0 ? 2200 + i : ''},${i % 3 === 1 ? v : ''}`)}`;
    const { capture } = await readText(text);
    for (const { time, values, facts } of capture.channels) {
      expect(values).toHaveLength(20);
      expect(time.kind).toBe('listed');
      expect(facts.medianRateHz).toBeCloseTo(10 / 3, 6);
    }
    expect(timeAt(capture.channels[1]?.time ?? { kind: 'regular', startS: 0, stepS: 1, length: 0 }, 0)).toBe(0.1);
  });

  it('takes words for "no value" as missing, and says so once', async () => {
    const text = `Time (s),rpm,B1S1 V\n${rowsOf(60, (i, v) => `${tenth(i)},${i % 7 === 3 ? '--' : 2200},${i % 11 === 5 ? 'OFF' : v}`)}`;
    const { capture } = await readText(text);
    expect(capture.channels.map(({ facts }) => facts.finite)).toEqual([51, 55]);
    const told = capture.warnings.filter(({ id }) => id === 'unreadableCells');
    expect(told).toMatchObject([{ count: 14, row: 5 }]);
  });
});

describe('a text of one row a value', () => {
  it('gathers the channels by their names, with their units', async () => {
    const text = `time;name;value;unit\n${rowsOf(60, (i, v) => `${tenth(i)};Engine speed;${2200 + i};1/min\n${(i / 10 + 0.03).toFixed(2)};O2 B1S1;${(Number(v) * 1000).toFixed(0)};mV`)}`;
    const { capture, question } = await readText(text);
    expect(capture.layout.id).toBe('longText');
    expect(found(capture)).toEqual([RPM, FRONT]);
    expect(capture.channels[1]?.facts.medianRateHz).toBeCloseTo(10, 9);
    expect(question).toBeNull();
  });

  it('works without a header, and with names that hold their units', async () => {
    const text = rowsOf(60, (i, v) => `${tenth(i)},Engine speed (1/min),${2200 + i}\n${tenth(i)},O2 B1S1 (V),${v}`);
    const { capture } = await readText(text);
    expect(found(capture)).toEqual([RPM, FRONT]);
    expect(capture.channels[0]?.time).toBe(capture.channels[1]?.time);
  });

  it('adds the milliseconds that stand beside a clock of whole seconds', async () => {
    const text = `Time,ms,Name,Value\n${rowsOf(60, (i, v) => {
      const at = `12:00:${String(Math.floor(i / 2)).padStart(2, '0')},${i % 2 === 0 ? 250 : 900}`;
      return `${at},Engine speed (1/min),${2200 + i}\n${at},O2 B1S1 (V),${v}`;
    })}`;
    const { capture } = await readText(text);
    expect(found(capture)).toEqual([RPM, FRONT]);
    for (const { time } of capture.channels)
      expect([0, 1, 2, 3].map((i) => Number(timeAt(time, i).toFixed(6)))).toEqual([0, 0.65, 1, 1.65]);
    expect(capture.warnings).toEqual([]);
  });

  it('is not mistaken for one where a column holds a state in words', async () => {
    const text = `Time (s),Loop,RPM\n${rowsOf(60, (i) => `${tenth(i)},${i < 20 ? 'open' : 'closed'},${2200 + i}`)}`;
    const { capture } = await readText(text);
    expect(found(capture)).toEqual(['fuelStatus 1 1 1..2', RPM]);
  });
});

describe('a text with a time for every channel', () => {
  it('gives each channel its own times, counted from one start', async () => {
    const text = `Time (s),RPM,Time (s),O2 B1S1 (V)\n${rowsOf(60, (i, v) => `${(5 + i / 10).toFixed(1)},${2200 + i},${(5.02 + i / 5).toFixed(2)},${v}`)}`;
    const { capture } = await readText(text);
    expect(capture.layout.id).toBe('pairedText');
    expect(found(capture)).toEqual([RPM, FRONT]);
    expect(capture.channels.map(({ time }) => timeAt(time, 0))).toEqual([0, 0.02]);
    expect(capture.channels.map(({ facts }) => facts.medianRateHz)).toEqual([
      expect.closeTo(10, 9),
      expect.closeTo(5, 9),
    ]);
  });

  it('stops a channel where its own cells stop', async () => {
    const text = `Time (s),RPM,Time (s),O2 B1S1 (V)\n${rowsOf(60, (i, v) => (i < 30 ? `${tenth(i)},${2200 + i},${tenth(i)},${v}` : `,,${tenth(i)},${v}`))}`;
    const { capture } = await readText(text);
    expect(capture.channels.map(({ values }) => values.length)).toEqual([30, 60]);
  });
});

describe('three rows of headings over times for every channel', () => {
  it('are numbers, names and units, and the heading of the times in each of them is none of these', async () => {
    const head =
      '"Time";"12-0";"Time";"20-0";\n"Time";"0C - Engine RPM";"Time";"14 - O2 voltage B1S1";\n"Time";"rpm";"Time";"V";\n';
    const clock = (ms: number) => `"10:30:${comma(((21_000 + ms) / 1000).toFixed(3))}"`;
    const rows = rowsOf(60, (i, v) => `${clock(100 * i)};"${2200 + i}";${clock(100 * i + 40)};"${comma(v)}";`);
    const { capture } = await readText(head + rows);
    expect(capture.layout.words).toBe(
      'Text, semicolons, decimal commas, a time for each channel, header in row 2, units in row 3, clock times',
    );
    expect(found(capture)).toEqual([RPM, FRONT]);
    expect(capture.channels.map(({ name }) => name)).toEqual(['0C - Engine RPM', '14 - O2 voltage B1S1']);
  });
});

describe('a text without times', () => {
  const rows = rowsOf(60, (i, v) => `${2200 + i},${v},0.6`);

  it('takes the rate from the free text before the header', async () => {
    for (const [line, rate] of [
      ['Sample rate: 50 Hz', 50],
      ['Abtastrate;0,1;kHz', 100],
      ['Interval;0,01;s', 100],
      ['Sampling period = 5 ms', 200],
    ] as const) {
      const { capture, question } = await readText(`${line}\nRPM;O2S11;O2S12\n${rows.replaceAll(',', ';')}`);
      expect(capture.channels[0]?.facts.medianRateHz).toBeCloseTo(rate, 9);
      expect(question).toBeNull();
    }
  });

  it('asks for the rate where nothing tells it, and takes the answer', async () => {
    const text = `RPM,O2S11,O2S12\n${rows}`;
    const { capture, question } = await readText(text);
    expect(question?.needsRate).toBe(true);
    expect(capture.warnings.map(({ id }) => id)).toContain('noTime');
    const answered = await readText(text, {
      choice: { headerKey: question?.headerKey ?? '', timeColumn: null, rateHz: 25, columns: [] },
    });
    expect(answered.question).toBeNull();
    expect(answered.capture.durationS).toBeCloseTo(59 / 25, 9);
    expect(answered.capture.warnings.map(({ id }) => id)).not.toContain('noTime');
  });

  it('does not take a count of rows for times', async () => {
    const { question } = await readText(`No,RPM,O2S11\n${rowsOf(60, (i, v) => `${i},${2200 + i},${v}`)}`);
    expect(question?.needsRate).toBe(true);
  });
});
