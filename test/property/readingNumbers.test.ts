// Every number that reading makes of a plain cell has the very bits that JavaScript's own Number() gives for its text, by
// each of the ways through the reader: byte loop, slow cell, whole file, and beside papaparse.

import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import type { Capture } from '../../core/capture/capture.ts';
import type { Channel } from '../../core/capture/channel.ts';
import { readCapture } from '../../core/reading/readCapture.ts';
import { restoreDecimal } from '../../core/reading/text/columnStore.ts';
import { decimalsOf, parseNumber } from '../../core/reading/text/parseNumber.ts';
import { decimalsOfPlain, plainNumber } from '../../core/reading/text/plainNumber.ts';
import { bytesSource } from '../support/bytesSource.ts';

const digits = (min: number, max: number) => fc.stringMatching(new RegExp(`^[0-9]{${min},${max}}$`));

/** Plain numbers as instruments write them, and as nobody does: up to 30 digits, exponents to the ends of the range. */
const plainText = fc
  .record({
    sign: fc.constantFrom('', '', '', '-', '+'),
    whole: digits(0, 20),
    point: fc.constantFrom('', '.', '.'),
    fraction: digits(0, 12),
    exponent: fc.oneof(
      { weight: 6, arbitrary: fc.constant('') },
      {
        weight: 1,
        arbitrary: fc
          .tuple(fc.constantFrom('e', 'E'), fc.constantFrom('', '+', '-'), fc.integer({ min: 0, max: 330 }))
          .map((parts) => parts.join('')),
      },
    ),
  })
  .map(
    ({ sign, whole, point, fraction, exponent }) => `${sign}${whole}${point}${point === '' ? '' : fraction}${exponent}`,
  )
  .filter((text) => /\d/.test(text.replace(/[eE].*$/, '')));

const bytesOf = (text: string) => new TextEncoder().encode(text);

/** What Number() makes of a text; a number that is too large to be one is a missing value. */
const usable = (text: string) => (Number.isFinite(Number(text)) ? Number(text) : Number.NaN);

describe('numbers from bytes', () => {
  it('are Number() to the last bit', () => {
    fc.assert(
      fc.property(plainText, (text) => {
        const bytes = bytesOf(`,${text},`);
        expect(Object.is(plainNumber(bytes, 1, bytes.length - 1, 46), usable(text))).toBe(true);
        expect(Object.is(parseNumber(text, '.'), usable(text))).toBe(true);
      }),
      { numRuns: 5000 },
    );
  });

  it('are the same with a decimal comma', () => {
    fc.assert(
      fc.property(plainText, (text) => {
        const bytes = bytesOf(text.replace('.', ','));
        expect(Object.is(plainNumber(bytes, 0, bytes.length, 44), usable(text))).toBe(true);
      }),
    );
  });

  it('are shortest-written doubles read back exactly', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        const bytes = bytesOf(String(value));
        expect(plainNumber(bytes, 0, bytes.length, 46)).toBe(value === 0 ? 0 : value);
      }),
      { numRuns: 5000 },
    );
  });

  it.each([
    '',
    '-',
    '+',
    '.',
    '-.',
    'e5',
    '1e',
    '1e+',
    '1e12345',
    '0x10',
    'Infinity',
    'NaN',
    '1 2',
    '1.2.3',
    '--1',
    '1,5',
    '٣',
  ])('are none in "%s"', (text) => {
    const bytes = bytesOf(text);
    expect(plainNumber(bytes, 0, bytes.length, 46)).toBeNaN();
  });

  it('tell their digits after the decimal sign alike, from bytes and from text', () => {
    fc.assert(
      fc.property(plainText, (text) => {
        const bytes = bytesOf(text);
        expect(decimalsOfPlain(bytes, 0, bytes.length, 46)).toBe(decimalsOf(text));
      }),
    );
  });
});

/** What the file's texts mean: 8-byte values as they are, 4-byte values restored from their decimals. */
function numbersOf({ values }: Channel, decimals: number): number[] {
  return Array.from(values, (value) => (values instanceof Float32Array ? restoreDecimal(value, decimals) : value));
}

async function read(text: string, chunkBytes: number): Promise<Capture> {
  const outcome = await readCapture(bytesSource('generated.csv', text, chunkBytes), { choice: null });
  if (!outcome.ok) throw new Error(outcome.problem.what);
  return outcome.value.capture;
}

/** A column of an instrument: a fixed number of digits after the decimal sign, some cells blank. */
const column = fc
  .record({
    decimals: fc.integer({ min: 0, max: 6 }),
    size: fc.constantFrom(1, 1, 100, 9000, 4e6),
    blanks: fc.constantFrom(0, 0, 0.1),
  })
  .chain(({ decimals, size, blanks }) =>
    fc.record({
      decimals: fc.constant(decimals),
      cells: fc.array(
        fc
          .tuple(fc.double({ min: -1, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }))
          .map(([x, blank]) => (blank < blanks ? '' : (x * size).toFixed(decimals))),
        { minLength: 30, maxLength: 30 },
      ),
    }),
  );

const file = fc.record({
  columns: fc.array(column, { minLength: 1, maxLength: 6 }),
  delimiter: fc.constantFrom(',', ';', '\t', '|'),
  lineEnd: fc.constantFrom('\n', '\r\n', '\r'),
  quoted: fc.boolean(),
  chunkBytes: fc.integer({ min: 1, max: 900 }),
});

describe('numbers of whole files', () => {
  it('are what papaparse and Number() make of the same file, whatever the dialect and the chunks', async () => {
    await fc.assert(
      fc.asyncProperty(file, async ({ columns, delimiter, lineEnd, quoted, chunkBytes }) => {
        const header = ['Time (s)', ...columns.map((_, k) => `Channel ${k}`)];
        const rows = Array.from({ length: 30 }, (_, i) => [
          (i / 10).toFixed(1),
          ...columns.map(({ cells }) => cells[i] ?? ''),
        ]);
        const cell = (text: string) => (quoted ? `"${text}"` : text);
        const text = [header, ...rows].map((row) => row.map(cell).join(delimiter)).join(lineEnd) + lineEnd;
        const capture = await read(text, chunkBytes);
        const parsed = Papa.parse<string[]>(text, { delimiter, newline: lineEnd, skipEmptyLines: true }).data.slice(1);
        columns.forEach(({ decimals }, k) => {
          const wanted = parsed
            .map((row) => row[k + 1] ?? '')
            .map((cellText) => (cellText === '' ? Number.NaN : Number(cellText)));
          const channel = capture.channels[k];
          if (channel === undefined) throw new Error('A channel is missing.');
          const sparse = channel.values.length < wanted.length;
          expect(numbersOf(channel, decimals)).toEqual(
            sparse ? wanted.filter((value) => !Number.isNaN(value)) : wanted,
          );
        });
      }),
      { numRuns: 200 },
    );
  });

  it('take 4 bytes only where every decimal number of the column comes back exactly', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 6 }),
        fc.integer({ min: -(2 ** 23) + 1, max: 2 ** 23 - 1 }),
        (decimals, whole) => {
          const value = Number(`${whole}e-${decimals}`);
          expect(restoreDecimal(Math.fround(value), decimals)).toBe(value);
        },
      ),
      { numRuns: 5000 },
    );
  });

  it.each([
    ['0.7250', Float32Array],
    ['2344.25', Float32Array],
    ['8388.607', Float32Array],
    ['8388.608', Float64Array],
    ['0.123456789', Float64Array],
    ['16777217', Float64Array],
  ])('%s is kept in a %o', async (cell, kind) => {
    const text = `Time (s),x\n0.0,${cell}\n0.1,${cell}\n0.2,0.5\n`.replaceAll('0.5\n', `${cell}\n`);
    const [channel] = (await read(text, 64)).channels;
    expect(channel?.values).toBeInstanceOf(kind);
  });

  it('widens a column in the middle without changing what it held', async () => {
    const cells = Array.from({ length: 20_000 }, (_, i) => (i < 15_000 ? (i / 1000).toFixed(3) : (i / 7).toFixed(9)));
    const text = `Time (s),x\n${cells.map((cell, i) => `${(i / 10).toFixed(1)},${cell}`).join('\n')}\n`;
    const [channel] = (await read(text, 65_536)).channels;
    expect(channel?.values).toBeInstanceOf(Float64Array);
    expect([...(channel?.values ?? [])]).toEqual(cells.map(Number));
  });
});
