// What was odd about a file is told, with the rows; nothing is dropped or repaired silently.

import { describe, expect, it } from 'vitest';
import type { CaptureWarning } from '../../../../core/capture/warnings.ts';
import { readText, rowsOf } from '../../../support/readText.ts';

const tenth = (i: number) => (i / 10).toFixed(1);
const body = rowsOf(40, (i, v) => `${tenth(i)},${2200 + i},${v}`);
const lines = body.trimEnd().split('\n');
const HEADER = 'Time (s),RPM,O2 B1S1 (V)';

async function warningsOf(text: string): Promise<readonly CaptureWarning[]> {
  return (await readText(text)).capture.warnings;
}

describe('what is told about a text', () => {
  it('nothing, where nothing was odd', async () => {
    expect(await warningsOf(`${HEADER}\n${body}`)).toEqual([]);
  });

  it('rows without a time or a number, with the row of the first', async () => {
    const text = [HEADER, ...lines.slice(0, 10), 'engine off', 'Marker,,', ...lines.slice(10), ''].join('\n');
    expect(await warningsOf(text)).toMatchObject([{ id: 'rowsSkipped', row: 12, count: 2, repaired: false }]);
  });

  it('remarks between header and data, which hide the header from nobody', async () => {
    const text = ['Recorder 5', HEADER, 'engine off', '', 'marker 1', body].join('\n');
    const { capture } = await readText(text);
    expect(capture.channels.map(({ role }) => role)).toEqual(['rpm', 'upstreamO2']);
    expect(capture.warnings).toMatchObject([
      {
        id: 'rowsSkipped',
        row: 3,
        count: 2,
        repaired: false,
        detail:
          '2 rows between the header and the first whole row of values were left out; the first reads “engine off”.',
      },
    ]);
    expect(capture.rows).toBe(40);
    const withUnits = ['Time,RPM,O2 B1S1', 's,1/min,V', 'key on', body].join('\n');
    expect((await readText(withUnits)).capture.channels.map(({ fileUnit }) => fileUnit)).toEqual(['1/min', 'V']);
  });

  it('a header that stands again', async () => {
    const text = [HEADER, ...lines.slice(0, 20), HEADER, ...lines.slice(20), ''].join('\n');
    const { capture } = await readText(text);
    expect(capture.warnings).toMatchObject([{ id: 'headerRepeated', row: 22, count: 1, repaired: false }]);
    expect(capture.rows).toBe(40);
  });

  it('rows that are too short or too long', async () => {
    const text = [
      HEADER,
      ...lines.map((line, i) => (i === 12 ? line.replace(/,[^,]*$/, '') : i === 30 ? `${line},1` : line)),
      '',
    ].join('\n');
    const { capture } = await readText(text);
    expect(capture.warnings).toMatchObject([
      { id: 'unreadableCells', row: 14, count: 1, repaired: false },
      { id: 'unreadableCells', row: 32, count: 1, repaired: false },
    ]);
    expect(capture.channels[1]?.values[12]).toBeNaN();
  });

  it('cells that are no numbers, by their column and with the first of them', async () => {
    const text = [HEADER, ...lines.map((line, i) => (i % 10 === 9 ? line.replace(/\d+\.\d+$/, 'abc') : line)), ''].join(
      '\n',
    );
    const [warning] = await warningsOf(text);
    expect(warning).toMatchObject({ id: 'unreadableCells', row: 11, count: 4, repaired: false });
    expect(warning?.detail).toContain('“O2 B1S1”');
    expect(warning?.detail).toContain('“abc”');
  });

  it('a row that breaks off, which is left out', async () => {
    const { capture } = await readText(`${HEADER}\n${body}4.0,22`);
    expect(capture.rows).toBe(40);
    expect(capture.warnings).toMatchObject([{ id: 'truncated', row: 42, count: 1, repaired: false }]);
  });

  it('a last row without a line end, which is kept', async () => {
    const { capture } = await readText(`${HEADER}\n${body}4.0,2240,0.4`);
    expect(capture.rows).toBe(41);
    expect(capture.warnings).toMatchObject([{ id: 'unfinished', row: 42, count: 1, repaired: false }]);
  });

  it('line ends of different kinds, and letters that are no UTF-8', async () => {
    const mixed = `${HEADER}\r\n${lines.map((line, i) => line + ['\n', '\r\n', '\r'][i % 3]).join('')}`;
    expect(await warningsOf(mixed)).toMatchObject([{ id: 'mixedLineEnds' }]);
    const { capture } = await readText(
      new Uint8Array(
        Buffer.from(
          `${HEADER},Kühlmittel (°C)\n${rowsOf(40, (i, v) => `${tenth(i)},${2200 + i},${v},${80 + (i % 2)}`)}`,
          'latin1',
        ),
      ),
    );
    expect(capture.warnings).toMatchObject([{ id: 'badEncoding' }]);
    expect(capture.channels[2]).toMatchObject({ role: 'coolant', name: 'Kühlmittel (°C)' });
  });

  it('channels that never change, but not a parked car', async () => {
    const text = `Time (s),Vehicle speed (km/h),Coolant (°C)\n${rowsOf(40, (i) => `${tenth(i)},0,88`)}`;
    expect(await warningsOf(text)).toMatchObject([{ id: 'channelNeverChanges', count: 40 }]);
  });

  it('values that are held from the row before, with both rates', async () => {
    const text = `Time (s),O2 B1S1 (V)\n${rowsOf(400, (i) => `${tenth(i)},${(0.45 + 0.4 * Math.sin(Math.floor(i / 4) * 2.1)).toFixed(3)}`)}`;
    const { capture } = await readText(text);
    expect(capture.channels[0]?.facts.renewalRateHz).toBeCloseTo(2.5, 6);
    expect(capture.warnings).toMatchObject([{ id: 'heldValues' }]);
    expect(capture.warnings[0]?.detail).toContain('at 10 Hz but renewed at only about 2.5 Hz');
  });

  it('values beyond what a channel can carry, which are kept', async () => {
    const text = `Time (s),RPM\n${rowsOf(400, (i) => `${tenth(i)},${i === 77 ? 30000 : 800 + (i % 9)}`)}`;
    const { capture } = await readText(text);
    expect(capture.channels[0]).toMatchObject({ role: 'rpm', facts: { max: 30000 } });
    expect(capture.warnings).toMatchObject([{ id: 'other', repaired: false }]);
  });

  it('speaks in sentences, without codes', async () => {
    const texts = [
      [HEADER, 'x', ...lines, HEADER, '4.0,1'].join('\n'),
      `RPM,O2\n${rowsOf(40, (i, v) => `${2200 + i},${v}`)}`,
      `Time (s),Coolant\n${rowsOf(40, (i, v) => `${tenth(i)},${v}`)}`,
    ];
    for (const text of texts) {
      for (const { detail } of await warningsOf(text)) {
        expect(detail).toMatch(/^[A-Z“0-9].*\.$/);
        expect(detail).not.toMatch(/undefined|NaN|null|Infinity|\[object/);
      }
    }
  });
});

describe('the question about columns', () => {
  it('comes where a role contradicts its values, with the guess and what it rests on', async () => {
    const { capture, question } = await readText(
      `Time (s),RPM,Coolant\n${rowsOf(40, (i, v) => `${tenth(i)},${2200 + i},${v}`)}`,
    );
    expect(capture.channels[1]?.role).toBe('other');
    expect(question?.words).toBe('The values of a channel contradict its name.');
    expect(question?.guesses).toMatchObject([
      { index: 0, name: 'Time', heading: 'Time (s)', role: 'time', certain: true },
      { index: 1, name: 'RPM', role: 'rpm', certain: true, min: 2200, max: 2239 },
      { index: 2, name: 'Coolant', role: 'other', certain: false },
    ]);
    expect(question?.guesses[2]?.because).toContain('look like a sensor');
    expect(question?.preview[0]).toEqual(['Time (s)', 'RPM', 'Coolant']);
    expect(question?.preview).toHaveLength(12);
  });

  it('comes where two sensors have no place, and where nothing has a name', async () => {
    expect(
      (await readText(`Time (s),O2 sensor,Oxygen sensor\n${rowsOf(40, (i, v) => `${tenth(i)},${v},0.6`)}`)).question
        ?.words,
    ).toBe('2 channels are not certain.');
    expect((await readText(rowsOf(40, (i, v) => `${tenth(i)},${2200 + i},${v}`))).question?.words).toBe(
      'No channel could be told by its name.',
    );
  });

  it('does not come where all is certain, unless it is asked for', async () => {
    expect((await readText(`${HEADER}\n${body}`)).question).toBeNull();
    expect((await readText(`${HEADER}\n${body}`, { alwaysAsk: true })).question?.guesses).toHaveLength(3);
  });

  it('keeps its preview small, whatever the file', async () => {
    const wide = Array.from({ length: 200 }, (_, k) => `Column number ${k} with a very long name indeed, and more`);
    const text = `${wide.map((name) => `"${name}"`).join(',')}\n${rowsOf(40, (i) => wide.map((_, k) => i + k / 10).join(','))}`;
    const { question } = await readText(text);
    expect(question?.preview.length).toBeLessThanOrEqual(12);
    for (const row of question?.preview ?? []) {
      expect(row.length).toBeLessThanOrEqual(64);
      for (const cell of row) expect(cell.length).toBeLessThanOrEqual(40);
    }
  });
});

describe('a choice of columns', () => {
  const text = rowsOf(60, (i, v) => `${i * 20},${(Number(v) * 1000).toFixed(0)},620,${2200 + i}`);

  it('says what is what, in which unit, and is kept by the header’s key', async () => {
    const asked = await readText(text);
    const choice = {
      headerKey: asked.question?.headerKey ?? '',
      timeColumn: null,
      rateHz: 50,
      columns: [
        { index: 0, role: 'ignore', bank: null, sensor: null, unit: null },
        { index: 1, role: 'upstreamO2', bank: 2 as const, sensor: 1, unit: 'mV' },
        { index: 2, role: 'downstreamO2', bank: 2 as const, sensor: 2, unit: 'mV' },
        { index: 3, role: 'rpm', bank: null, sensor: null, unit: 'rpm' },
      ],
    };
    const { capture, question } = await readText(text, { choice });
    expect(capture.channels).toMatchObject([
      { role: 'upstreamO2', bank: 2, sensor: 1, unit: 'V', facts: { max: 0.848 } },
      { role: 'downstreamO2', bank: 2, sensor: 2, unit: 'V', facts: { max: 0.62 } },
      { role: 'rpm', bank: null, unit: '1/min' },
    ]);
    expect(capture.durationS).toBeCloseTo(59 / 50, 9);
    expect(question).toBeNull();
  });

  it('is ignored for a file with another header', async () => {
    const choice = { headerKey: 'another', timeColumn: null, rateHz: 999, columns: [] };
    expect((await readText(text, { choice })).capture).toEqual((await readText(text)).capture);
  });

  it('may name the column of times', async () => {
    const two = `A,B,RPM\n${rowsOf(40, (i) => `${i * 0.5},${i * 0.1},${800 + i}`)}`;
    const { headerKey } = (await readText(two, { alwaysAsk: true })).question ?? { headerKey: '' };
    const chosen = await readText(two, { choice: { headerKey, timeColumn: 1, rateHz: null, columns: [] } });
    expect(chosen.capture.durationS).toBeCloseTo(3.9, 9);
  });
});

describe('a choice for a text of one row a value', () => {
  const long = (first: string, second: string) =>
    `time;name;value\n${rowsOf(40, (i, v) => `${tenth(i)};${first};${v}\n${tenth(i)};${second};0.6`)}`;

  it('is kept by the names of its channels, not by the three columns that all such files have', async () => {
    const one = await readText(long('A', 'B'), { alwaysAsk: true });
    const other = await readText(long('C', 'D'), { alwaysAsk: true });
    expect(one.question?.headerKey).not.toBe(other.question?.headerKey);
    const choice = {
      headerKey: one.question?.headerKey ?? '',
      timeColumn: null,
      rateHz: null,
      columns: [{ index: 0, role: 'upstreamO2', bank: 1 as const, sensor: 1, unit: 'V' }],
    };
    expect((await readText(long('A', 'B'), { choice })).capture.channels[0]?.role).toBe('upstreamO2');
    expect((await readText(long('C', 'D'), { choice })).capture.channels[0]?.role).toBe('other');
  });
});

describe('a capture without an oxygen sensor by name', () => {
  it('is asked about where a channel swings like one', async () => {
    const { question } = await readText(
      `Time (s),RPM,CH2 (V)\n${rowsOf(60, (i, v) => `${tenth(i)},${2200 + i},${v}`)}`,
    );
    expect(question?.words).toBe('No oxygen sensor was found by its name, but a channel has values like one.');
    expect(
      (await readText(`Time (s),RPM,CH2 (V)\n${rowsOf(60, (i) => `${tenth(i)},${2200 + i},13.8`)}`)).question,
    ).toBeNull();
  });
});
