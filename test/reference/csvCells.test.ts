// RFC 4180 (October 2005) for quoting, and OWASP "CSV Injection" for cells that a spreadsheet would run (checks 7.01, 7.03).
// Read back by papaparse, by csv-parse and, where python3 is installed, by Python's csv module.

import { spawnSync } from 'node:child_process';
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { type CsvValue, csvCell, csvText } from '../../core/evidence/formats/csvCells.ts';
import { HOSTILE_TEXTS } from '../support/hostileTexts.ts';

const STARTS_FORMULA = /^[\s\p{Cc}]*[=+\-@＝＋－＠]|^\p{Cc}/u;
const PYTHON = `
import csv, io, json, sys
files = json.loads(sys.stdin.buffer.read().decode('utf-8'))
read = lambda file: list(csv.reader(io.StringIO(file['text'], newline=''), delimiter=file['separator']))
print(json.dumps([read(file) for file in files]))
`;
const hasPython = spawnSync('python3', ['-c', 'import csv']).status === 0;

/** A file with the text in its first, middle and last column and between numbers. */
const fileOf = (text: string, sign: '.' | ',') =>
  csvText(
    [
      ['head', 'head', 'head', 'head'],
      [text, -0.05, text, text],
      [1e-7, text, 12_345.5, text],
    ],
    sign,
  );

describe('RFC 4180', () => {
  test('2.5 to 2.7: quotes are doubled, line ends and separators quoted; records end in CR LF', () => {
    expect(csvText([['a "b", c', 1]], '.')).toBe('"a ""b"", c",1\r\n');
    expect(csvText([['two\r\nlines', 'plain']], '.')).toBe('"two\r\nlines",plain\r\n');
  });

  test('a comma as decimal sign goes with semicolons between cells', () => {
    expect(csvText([[0.5, 'a;b', -1.25]], ',')).toBe('0,5;"a;b";-1,25\r\n');
  });

  test('what is no number is an empty cell, never NaN', () => {
    expect(csvText([[Number.NaN, null, Number.POSITIVE_INFINITY]], '.')).toBe(',,\r\n');
  });
});

describe('T-INJ-1, OWASP CSV Injection', () => {
  test('check 7.03: =1+1 becomes text, the number -0.31 stays a number', () => {
    expect(csvCell('=1+1', '.')).toBe('"\'=1+1"');
    expect(csvCell(-0.31, '.')).toBe('-0.31');
  });

  test.each(HOSTILE_TEXTS.map((text) => [text]))('%j in every column and with both separators', (text) => {
    for (const [sign, separator] of [
      ['.', ','],
      [',', ';'],
    ] as const) {
      const rows = Papa.parse<string[]>(fileOf(text, sign), { delimiter: separator, skipEmptyLines: true }).data;
      expect(rows).toHaveLength(3);
      expect(rows[1]?.[1]).toBe(String(-0.05).replace('.', sign));
      expect(rows[2]?.[2]).toBe(String(12_345.5).replace('.', sign));
      for (const cell of [rows[1]?.[0], rows[1]?.[2], rows[1]?.[3], rows[2]?.[1], rows[2]?.[3]]) {
        expect(cell).not.toMatch(STARTS_FORMULA);
      }
    }
  });

  test('a file that is opened with the wrong separator runs nothing either', () => {
    for (const text of HOSTILE_TEXTS) {
      for (const [sign, wrong] of [
        ['.', ';'],
        ['.', '\t'],
        [',', ','],
        [',', '\t'],
      ] as const) {
        const file = csvText([['head', text, 'x', text]], sign);
        for (const row of Papa.parse<string[]>(file, { delimiter: wrong, quoteChar: '\u0001' }).data) {
          for (const cell of row.slice(1))
            expect(cell, JSON.stringify([text, sign, wrong])).not.toMatch(/^["\s]*[=+\-@＝＋－＠]/u);
        }
      }
    }
  });

  // As bytes: half a surrogate pair has none. Python's csv module takes no NUL before 3.11.
  const asBytes = HOSTILE_TEXTS.map((text) => text.replaceAll('\0', '').replace(/\p{Cs}/gu, '\ufffd'));
  const files = asBytes.flatMap((text) => [
    { text: fileOf(text, '.'), separator: ',' },
    { text: fileOf(text, ','), separator: ';' },
  ]);
  const byPapaparse = files.map(
    ({ text, separator }) => Papa.parse<string[]>(text, { delimiter: separator, skipEmptyLines: true }).data,
  );

  test('csv-parse reads the same cells as papaparse', () => {
    const read = files.map(({ text, separator }) => parse(text, { delimiter: separator }));
    expect(read).toEqual(byPapaparse);
  });

  test.runIf(hasPython)('Python reads the same cells as papaparse', () => {
    const run = spawnSync('python3', ['-c', PYTHON], { input: JSON.stringify(files), maxBuffer: 1e8 });
    expect(run.stderr.toString('utf8')).toBe('');
    expect(JSON.parse(run.stdout.toString('utf8'))).toEqual(byPapaparse);
  });

  test('any text comes back as itself, or with apostrophes that keep it from running; numbers always', () => {
    const value: fc.Arbitrary<CsvValue> = fc.oneof(
      fc.string({ unit: 'grapheme' }),
      fc.double({ noNaN: true, noDefaultInfinity: true }),
    );
    fc.assert(
      fc.property(
        fc.array(value, { minLength: 2, maxLength: 6 }),
        fc.constantFrom('.' as const, ',' as const),
        (cells, sign) => {
          const [row = []] = Papa.parse<string[]>(csvText([cells], sign), { delimiter: sign === ',' ? ';' : ',' }).data;
          cells.forEach((cell, i) => {
            const back = row[i] ?? '';
            if (typeof cell === 'number') expect(Number(back.replace(',', '.'))).toBe(cell === 0 ? 0 : cell);
            else expect(back.replaceAll("'", '')).toBe(String(cell).replaceAll("'", ''));
          });
        },
      ),
      { numRuns: 5000 },
    );
  });
});
