// Files as instruments write them, row after row alike, with rows among them that are written otherwise: each number has
// the very bits of JavaScript's own Number(), rows and lines are counted as papaparse counts them, and what was found out
// on the way (range, extremes of blocks) is what a walk through the values finds.

import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import type { Capture } from '../../core/capture/capture.ts';
import { rangeOf } from '../../core/capture/channelFacts.ts';
import { buildPyramid } from '../../core/capture/pyramid.ts';
import { readCapture } from '../../core/reading/readCapture.ts';
import { restoreDecimal } from '../../core/reading/text/columnStore.ts';
import { bytesSource } from '../support/bytesSource.ts';

const ROWS = 240;

/** A column that keeps its form, and cells that do not. */
const column = fc.record({
  decimals: fc.integer({ min: 0, max: 5 }),
  size: fc.constantFrom(1, 9, 90, 900, 9000, 900_000),
  sign: fc.constantFrom(1, 1, -1),
  seed: fc.integer({ min: 1, max: 1e6 }),
});

const oddCell = fc.constantFrom(
  '',
  '7',
  '-3.25',
  '+2',
  '12345.678901',
  '1e2',
  '"0.5"',
  ' 1.5',
  '0.5 ',
  '.5',
  '5.',
  'x',
  '1:2',
);

const file = fc.record({
  columns: fc.array(column, { minLength: 1, maxLength: 5 }),
  odd: fc.array(fc.record({ row: fc.nat(ROWS - 1), column: fc.nat(4), cell: oddCell }), { maxLength: 8 }),
  time: fc.constantFrom<'number' | 'clock'>('number', 'clock'),
  state: fc.boolean(),
  delimiter: fc.constantFrom(',', ';', '\t'),
  lineEnd: fc.constantFrom('\n', '\r\n', '\r'),
  chunkBytes: fc.integer({ min: 200, max: 9000 }),
});

function clock(i: number): string {
  return `08:${String(Math.floor(i / 600)).padStart(2, '0')}:${String(Math.floor(i / 10) % 60).padStart(2, '0')}.${i % 10}00`;
}

function cellsOf({ columns, odd }: { columns: readonly Column[]; odd: readonly Odd[] }): string[][] {
  const rows = Array.from({ length: ROWS }, (_, i) =>
    columns.map(({ decimals, size, sign, seed }) => {
      const share = ((Math.imul(i + seed, 2_654_435_761) >>> 8) & 0xffff) / 0xffff;
      return (sign * size * (0.2 + 0.8 * share)).toFixed(decimals);
    }),
  );
  for (const { row, column: at, cell } of odd) {
    const cells = rows[row];
    if (cells !== undefined && at < cells.length && row > 20) cells[at] = cell;
  }
  return rows;
}
type Column = { decimals: number; size: number; sign: number; seed: number };
type Odd = { row: number; column: number; cell: string };

/** What a cell is worth: a plain number is Number(); everything else among these is no value. */
function worth(cell: string): number {
  const text = cell.trim();
  return text === '' || Number.isNaN(Number(text)) ? Number.NaN : Number(text);
}

async function read(text: string, chunkBytes: number): Promise<Capture> {
  const outcome = await readCapture(bytesSource('generated.csv', text, chunkBytes), { choice: null });
  if (!outcome.ok) throw new Error(outcome.problem.what);
  return outcome.value.capture;
}

describe('rows that are written alike', () => {
  it('give the numbers that papaparse and Number() give, whatever stands among them', async () => {
    await fc.assert(
      fc.asyncProperty(file, async (made) => {
        const { columns, delimiter, lineEnd, time, state, chunkBytes } = made;
        const rows = cellsOf(made);
        const header = ['Time', ...columns.map((_, k) => `Channel ${k}`), ...(state ? ['Fuel system'] : [])];
        const text = [
          header.join(delimiter),
          ...rows.map((cells, i) =>
            [
              time === 'clock' ? clock(i) : (i / 10).toFixed(1),
              ...cells,
              ...(state ? [i % 50 < 30 ? 'closed' : 'open'] : []),
            ].join(delimiter),
          ),
          '',
        ].join(lineEnd);
        const capture = await read(text, chunkBytes);
        const parsed = Papa.parse<string[]>(text, { delimiter, newline: lineEnd, skipEmptyLines: true }).data.slice(1);
        expect(capture.rows).toBe(parsed.length);
        columns.forEach(({ decimals }, k) => {
          const channel = capture.channels[k];
          if (channel === undefined) throw new Error('A channel is missing.');
          const wanted = parsed.map((row) => worth(row[k + 1] ?? ''));
          const most = Math.max(decimals, ...parsed.map((row) => (/\.(\d*)/.exec(row[k + 1] ?? '')?.[1] ?? '').length));
          const narrow = channel.values instanceof Float32Array;
          expect(Array.from(channel.values, (value) => (narrow ? restoreDecimal(value, most) : value))).toEqual(wanted);
          // A copy has nothing that was kept while reading.
          const { finite, min, max } = rangeOf(channel.values.slice());
          expect(channel.facts.finite).toBe(finite);
          if (!narrow) expect([channel.facts.min, channel.facts.max]).toEqual([min, max]);
          expect(buildPyramid(channel.values).levels).toEqual(buildPyramid(channel.values.slice()).levels);
        });
      }),
      { numRuns: 200 },
    );
  });

  it('keep the count of lines where a blank one stands between rows as long as the others', async () => {
    const row = (i: number): string => `${(i / 10).toFixed(1).padStart(5, '0')},0.${100 + i}`;
    const lines = Array.from({ length: 100 }, (_, i) => `${row(i)}\r\n`);
    lines[40] = `${row(40)}\n\n`; // as many bytes as CR LF
    lines[80] = `${row(80).slice(0, -3)}xyz\r\n`;
    const capture = await read(`Time (s),Channel\r\n${lines.join('')}`, 4096);
    // Header, 80 rows before it, a blank line.
    expect(capture.warnings.find(({ id }) => id === 'unreadableCells')?.row).toBe(83);
    expect(capture.rows).toBe(100);
  });

  it('end where a line ends otherwise, although as many bytes follow', async () => {
    const row = (i: number): string => `0.${100 + i},${(i / 10).toFixed(1).padStart(5, '0')}`;
    const lines = Array.from({ length: 100 }, (_, i) => `${row(i)}\r\n`);
    lines[40] = `${row(40)}\r`;
    lines[41] = `1${row(41)}\r\n`;
    const [channel] = (await read(`Channel,Time (s)\r\n${lines.join('')}`, 4096)).channels;
    expect([40, 41, 42].map((i) => restoreDecimal(channel?.values[i] ?? 0, 3))).toEqual([0.14, 10.141, 0.142]);
  });

  it('end where a row is broken in two, although as many bytes follow', async () => {
    const lines = Array.from({ length: 100 }, (_, i) => `${clock(i)},0.${100 + i}\n`);
    lines[50] = `${clock(50)}\n0.150\n`;
    const capture = await read(`Clock,Channel\n${lines.join('')}`, 4096);
    // The first half has a time and no value, the second half no time.
    expect(capture.channels[0]?.values[50]).toBeNaN();
    expect(capture.warnings.find(({ id }) => id === 'rowsSkipped')).toMatchObject({ row: 53, count: 1 });
  });

  it('leave extremes of blocks that are those of the values, also where columns grew while they were read', async () => {
    const lines = Array.from(
      { length: 30_000 },
      (_, i) => `${(i / 100).toFixed(2)},${'ab'[i % 2]},${(i * 37) % 1009}\n`,
    );
    const { channels } = await read(`time (s),name,value\n${lines.join('')}`, 65_536);
    expect(channels.map(({ values }) => values.length)).toEqual([15_000, 15_000]);
    for (const { values } of channels) expect(buildPyramid(values).levels).toEqual(buildPyramid(values.slice()).levels);
  });
});
