// Texts of one row a value, as instruments write them that ask for one channel after another, with rounds among them that
// are broken, reversed or written otherwise: every channel has the values that papaparse and JavaScript's own Number()
// find under its name, in their order, at their times.

import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { timeAt } from '../../core/capture/timeBase.ts';
import { readCapture } from '../../core/reading/readCapture.ts';
import { restoreDecimal } from '../../core/reading/text/columnStore.ts';
import { bytesSource } from '../support/bytesSource.ts';

const ROUNDS = 120;

const channel = fc.record({
  name: fc.constantFrom('Alpha', 'Gamma', 'Delta', 'Theta', 'Kappa', 'Sigma', 'Omega', 'Rho'),
  decimals: fc.integer({ min: 0, max: 2 }),
  size: fc.constantFrom(9, 90, 900),
  sign: fc.constantFrom(1, 1, -1),
  seed: fc.integer({ min: 1, max: 1e6 }),
});
type Channel = {
  readonly name: string;
  readonly decimals: number;
  readonly size: number;
  readonly sign: number;
  readonly seed: number;
};

/** What happens to one row or round of the file, by its number. */
const happening = fc.record({
  round: fc.integer({ min: 2, max: ROUNDS - 1 }),
  place: fc.nat(7),
  kind: fc.constantFrom(
    'left out',
    'twice',
    'reversed',
    '+2',
    '1e2',
    '.5',
    '5.',
    ' 1.5',
    '"0.5"',
    '12345.678901',
    'x',
    '',
  ),
});

const file = fc.record({
  channels: fc.uniqueArray(channel, { selector: ({ name }) => name, minLength: 2, maxLength: 8 }),
  events: fc.array(happening, { maxLength: 6 }),
  units: fc.boolean(),
  clock: fc.boolean(),
  delimiter: fc.constantFrom(',', ';', '\t'),
  lineEnd: fc.constantFrom('\n', '\r\n', '\r'),
  chunkBytes: fc.integer({ min: 200, max: 9000 }),
});
type Made = typeof file extends fc.Arbitrary<infer One> ? One : never;

function timeOf(row: number, clock: boolean): string {
  const seconds = (row / 100).toFixed(2);
  return clock
    ? `09:${String(Math.floor(row / 6000)).padStart(2, '0')}:${((row % 6000) / 100).toFixed(2).padStart(5, '0')}`
    : seconds;
}

function cellOf({ decimals, size, sign, seed }: Channel, round: number): string {
  const share = ((Math.imul(round + seed, 2_654_435_761) >>> 8) & 0xffff) / 0xffff;
  return (sign * size * (0.2 + 0.79 * share)).toFixed(decimals);
}

function textOf({ channels, events, units, clock, delimiter, lineEnd }: Made): string {
  const lines = [['Time', 'Name', 'Value', ...(units ? ['Unit'] : [])].join(delimiter)];
  for (let round = 0, row = 0; round < ROUNDS; round++) {
    const mine = events.filter((one) => one.round === round);
    const order = mine.some(({ kind }) => kind === 'reversed') ? [...channels].reverse() : channels;
    order.forEach((one, place) => {
      const kind = mine.find((happens) => happens.place === place)?.kind;
      row++;
      if (kind === 'left out') return;
      const cell = kind === undefined || kind === 'twice' || kind === 'reversed' ? cellOf(one, round) : kind;
      const line = [timeOf(row, clock), one.name, cell, ...(units ? ['1'] : [])].join(delimiter);
      lines.push(line);
      if (kind === 'twice') lines.push(line);
    });
  }
  return `${lines.join(lineEnd)}${lineEnd}`;
}

describe('rounds of rows that are written alike', () => {
  it('give each channel the values of its name, whatever stands among them', async () => {
    await fc.assert(
      fc.asyncProperty(file, async (made) => {
        const text = textOf(made);
        const outcome = await readCapture(bytesSource('generated.csv', text, made.chunkBytes), { choice: null });
        if (!outcome.ok) throw new Error(outcome.problem.what);
        const { data } = Papa.parse<string[]>(text, {
          delimiter: made.delimiter,
          newline: made.lineEnd,
          skipEmptyLines: true,
        });
        const rows = data.slice(1);
        const firstS = secondsOf(rows[0]?.[0] ?? '');
        expect(outcome.value.capture.channels.map(({ name }) => name)).toEqual([
          ...new Set(rows.map(([, name]) => name)),
        ]);
        for (const { name, values, time } of outcome.value.capture.channels) {
          const own = rows.filter((row) => row[1] === name);
          const most = Math.max(...own.map((row) => (/\.(\d*)/.exec(row[2] ?? '')?.[1] ?? '').length));
          const narrow = values instanceof Float32Array;
          const wanted = own.map(([, , cell = '']) => (cell.trim() === '' ? Number.NaN : Number(cell)));
          expect(Array.from(values, (value) => (narrow ? restoreDecimal(value, most) : value))).toEqual(wanted);
          if (made.events.some(({ kind }) => kind === 'twice')) continue; // rows of one time are spread
          own.forEach((row, i) => {
            expect(timeAt(time, i)).toBeCloseTo(secondsOf(row[0] ?? '') - firstS, 6);
          });
        }
      }),
      { numRuns: 200 },
    );
  });
});

function secondsOf(time: string): number {
  return time.split(':').reduce((sum, part) => sum * 60 + Number(part), 0);
}
