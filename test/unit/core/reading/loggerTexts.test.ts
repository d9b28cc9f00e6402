// Texts as loggers, oscilloscopes, numerical programs and spreadsheets write them. All are invented; what they must be is
// written by hand.

import { describe, expect, it } from 'vitest';
import { readText, refusalOf } from '../../../support/readText.ts';

const HEADER = 'Time (s),RPM,O2S11 (V),O2S12 (V)\n';
const wave = (i: number, slow: number) => (0.45 + 0.4 * Math.sin(i / slow)).toFixed(3);
const values = (i: number) => `${2200 + (i % 40)},${wave(i, 3)},0.65`;
const lines = (count: number, row: (i: number) => string) =>
  Array.from({ length: count }, (_, i) => `${row(i)}\n`).join('');
const ROWS = lines(100, (i) => `${(i / 10).toFixed(1)},${values(i)}`);

describe('a logger that lost power', () => {
  it('leaves zeros behind the rows, however many: the rows are read', async () => {
    for (const zeros of [512, 4096, 600_000]) {
      const { capture } = await readText(HEADER + ROWS + '\0'.repeat(zeros));
      expect(capture.rows).toBe(100);
      expect(capture.warnings.filter(({ id }) => id === 'rowsSkipped')).toMatchObject([{ row: 102 }]);
    }
  });

  it('leaves them in the middle of a row: that row is left out and told', async () => {
    const { capture } = await readText(`${(HEADER + ROWS).slice(0, -6)}${'\0'.repeat(4096)}`);
    expect(capture.rows).toBe(99);
    expect(capture.warnings.map(({ id }) => id)).toContain('truncated');
  });
});

describe('an oscilloscope', () => {
  it('that tells its rate does not lend the first channel to the times, though it rises at first', async () => {
    const { capture } = await readText(
      `Sample rate:,1000,Hz\nInput one,Input two\n${lines(3000, (i) => `${wave(i, 900)},0.65`)}`,
    );
    expect(capture.durationS).toBe(2.999);
    expect(capture.channels).toHaveLength(2);
  });

  it('that tells none does not either where the name says channel', async () => {
    for (const name of ['CH A', 'Kanal 1', 'CH1', 'Voie 1']) {
      const { capture } = await readText(`${name},Other\n${lines(300, (i) => `${wave(i, 900)},0.65`)}`);
      expect(capture.channels.map((one) => one.name)).toEqual([name, 'Other']);
      expect(capture.warnings.map(({ id }) => id)).toContain('noTime');
    }
  });

  it('beside a serial line, whose speed is no rate of rows', async () => {
    const { capture } = await readText(`Baud rate: 115200\n${lines(100, (i) => `${i / 50},${values(i)}`)}`);
    expect(capture.durationS).toBe(1.98);
  });

  it('writes ∞ beyond its range: a value that is missing, also in the first row', async () => {
    const row = (i: number) => `${(i / 100).toFixed(2)},${i % 50 === 0 ? '∞' : wave(i, 9)},${i === 7 ? '-∞' : 0.6}`;
    const { capture } = await readText(`Time,Channel A,Channel B\n(s),(V),(V)\n\n${lines(200, row)}`);
    expect(capture.channels.map(({ name }) => name)).toEqual(['Channel A', 'Channel B']);
    expect(capture.rows).toBe(200);
    expect(capture.channels[0]?.facts.finite).toBe(196);
  });
});

describe('numerical programs', () => {
  it('set a sign before the names, which is no name itself', async () => {
    for (const sign of ['#', '%', '//']) {
      const { capture } = await readText(
        `${sign} t rpm o2s11 o2s12\n${lines(100, (i) => `${(i / 10).toExponential(9)} ${values(i).replaceAll(',', ' ')}`)}`,
      );
      expect(capture.channels.map(({ role }) => role)).toEqual(['rpm', 'upstreamO2', 'downstreamO2']);
      expect(capture.durationS).toBe(9.9);
    }
  });
});

describe('spreadsheets', () => {
  const noon = (i: number, stepS: number) => (0.5 + (i * stepS) / 86400).toFixed(10);

  it('keep clock times as shares of a day: a second is 1/86400', async () => {
    for (const stepS of [1, 0.5, 0.1]) {
      const { capture } = await readText(
        `Time,RPM,O2S11 (V),O2S12 (V)\n${lines(200, (i) => `${noon(i, stepS)},${values(i)}`)}`,
      );
      expect(capture.durationS).toBeCloseTo(199 * stepS, 3);
      expect(capture.warnings.map(({ id }) => id)).toContain('timeGuessed');
    }
  });

  it('cut the hours of a clock: 59:59.5 goes on at 00:00.0', async () => {
    const clock = (i: number) => `${Math.floor((3500 + i) / 60) % 60}:${String((3500 + i) % 60).padStart(2, '0')}.0`;
    const { capture } = await readText(
      `Time,RPM,O2S11 (V),O2S12 (V)\n${lines(200, (i) => `${clock(i)},${values(i)}`)}`,
    );
    expect(capture.durationS).toBe(199);
    expect(capture.warnings.filter(({ id }) => id !== 'channelNeverChanges')).toMatchObject([
      { id: 'clockPastMidnight', row: 102, repaired: true, detail: expect.stringContaining('full hour') },
    ]);
  });

  it('a second recording in minutes and seconds is no passing of the hour', async () => {
    const clock = (i: number) => `${String(Math.floor(i / 60)).padStart(2, '0')}:${String(i % 60).padStart(2, '0')}`;
    const both = lines(100, (i) => `${clock(i)},${values(i)}`).repeat(2);
    const { capture } = await readText(`Time,RPM,O2S11 (V),O2S12 (V)\n${both}`);
    expect(capture.durationS).toBe(99 + 10 + 99);
  });

  it('that show hours and minutes only are told of', async () => {
    const row = (i: number) => `10:${String(Math.floor(i / 60)).padStart(2, '0')},${values(i)}`;
    const { capture } = await readText(`Time,RPM,O2S11 (V),O2S12 (V)\n${lines(240, row)}`);
    expect(capture.warnings.map(({ id }) => id)).toContain('timeGuessed');
  });

  it('short recordings in seconds stay short', async () => {
    for (const stepS of [1e-6, 2.5e-6, 1 / 48000, 1e-5, 5e-4]) {
      const row = (i: number) => `${(0.02 + i * stepS).toFixed(10)},${wave(i, 30)},0.6`;
      const { capture } = await readText(`TIME,CH1,CH2\n${lines(1000, row)}`);
      expect(capture.durationS).toBeCloseTo(999 * stepS, 8);
    }
  });
});

describe('operating systems', () => {
  it('count 100 ns since 1601 or since the year 1: ten million are a second', async () => {
    // Whole days from either beginning to 2026-10-31: 155531 and 739919, by the rule of leap years.
    for (const days of [155_531, 739_919]) {
      const at = (i: number) => String(BigInt(days) * 864_000_000_000n + BigInt(i) * 1_000_000n);
      const { capture } = await readText(
        `Ticks,RPM,O2S11 (V),O2S12 (V)\n${lines(100, (i) => `${at(i)},${values(i)}`)}`,
      );
      expect(capture.durationS).toBeCloseTo(9.9, 4);
      expect(capture.warnings.map(({ id }) => id)).toContain('timeGuessed');
    }
  });
});

describe('one column of decimal commas', () => {
  it('is not two of whole numbers', async () => {
    const column = lines(200, (i) => wave(i, 3).replace('.', ','));
    for (const heading of ['', 'O2S11 (V)\n']) {
      const { capture } = await readText(heading + column);
      expect(capture.channels).toHaveLength(1);
      expect(capture.channels[0]?.facts.max).toBeCloseTo(0.85, 2);
    }
  });

  it('two of whole numbers stay two', async () => {
    expect((await readText(lines(200, (i) => `${i},${2200 + (i % 90)}`))).capture.channels).toHaveLength(2);
    expect((await readText(`A,B\n${lines(200, (i) => `${i},0${i % 10}`)}`)).capture.channels).toHaveLength(2);
  });
});

describe('tables of several', () => {
  it('vehicles, row by row, are told of', async () => {
    const row = (i: number) => `${8 + (i % 2)},${Math.floor(i / 2)},${values(i)}`;
    const { capture } = await readText(`VehId,Time (s),RPM,O2S11 (V),O2S12 (V)\n${lines(100, row)}`);
    expect(capture.warnings).toContainEqual(
      expect.objectContaining({ id: 'other', detail: expect.stringContaining('several vehicles') }),
    );
  });

  it('one vehicle is not', async () => {
    const { capture } = await readText(`VehId,${HEADER}${lines(100, (i) => `8,${i / 10},${values(i)}`)}`);
    expect(capture.warnings.filter(({ detail }) => detail.includes('several vehicles'))).toEqual([]);
  });
});

describe('what cannot be read', () => {
  it('says that the digits are others than 0 to 9', async () => {
    const other = (text: string) => text.replace(/\d/g, (digit) => String.fromCharCode(0x660 + Number(digit)));
    const problem = await refusalOf(`Time (s),RPM\n${lines(50, (i) => other(`${i},${2200 + i}`))}`);
    expect(problem.id).toBe('otherDigits');
  });

  it('calls JSON by its name, however its lines are cut', async () => {
    const table = Array.from({ length: 40 }, (_, i) => ({ t: i / 10, rpm: 2200 + i }));
    const columns = { t: table.map(({ t }) => t), rpm: table.map(({ rpm }) => rpm) };
    for (const text of [
      JSON.stringify(table),
      JSON.stringify({ rows: table }, null, 1),
      JSON.stringify(columns),
      JSON.stringify(columns, null, 1),
      table.map((row) => JSON.stringify(row)).join('\n'),
      table.map(({ t, rpm }) => JSON.stringify([t, rpm])).join('\n'),
    ]) {
      expect(await refusalOf(text)).toMatchObject({ id: 'markup', what: expect.stringContaining('JSON') });
    }
  });

  it('a section in brackets above a table is no JSON', async () => {
    expect((await readText(`[Data]\n${HEADER}${ROWS}`)).capture.rows).toBe(100);
  });
});
