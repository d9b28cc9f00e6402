// Texts of one row a value in which channels take turns, or one comes twice in a round, or none is named: every channel
// has the rows that papaparse finds under its name, in their order, and rows without a name are told.

import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { timeAt } from '../../core/capture/timeBase.ts';
import { readCapture } from '../../core/reading/readCapture.ts';
import { turnsFrom } from '../../core/reading/text/turns.ts';
import { bytesSource } from '../support/bytesSource.ts';

const name = fc.constantFrom('Alpha', 'Beta', 'Gamma', 'Delta', 'Epsilon', 'Zeta');

/** Names that come in this order, so many times over. */
const stretch = fc.record({
  order: fc.array(name, { minLength: 1, maxLength: 7 }),
  times: fc.integer({ min: 1, max: 40 }),
  unnamed: fc.boolean(),
});

const file = fc.record({
  stretches: fc.array(stretch, { minLength: 1, maxLength: 6 }),
  unit: fc.constantFrom(null, 'first', 'late'),
  date: fc.boolean(),
});
type Made = typeof file extends fc.Arbitrary<infer One> ? One : never;

function textOf({ stretches, unit, date }: Made): string {
  const names = ['Alpha', 'Beta', 'Alpha', 'Beta', 'Alpha', 'Beta'];
  for (const { order, times, unnamed } of stretches) {
    for (let i = 0; i < times; i++) names.push(...order);
    if (unnamed) names.push('');
  }
  const header = [...(date ? ['Date'] : []), 'Time', 'Name', 'Value', ...(unit === null ? [] : ['Unit'])];
  const rows = names.map((own, row) => {
    const told = unit === 'first' || row % 5 === 0 ? 'V' : '';
    const time = date ? clockOf(row) : (row / 10).toFixed(1);
    return [...(date ? ['2024-05-06'] : []), time, own, row + 0.5, ...(unit === null ? [] : [told])].join(',');
  });
  return `${[header.join(','), ...rows].join('\n')}\n`;
}

function clockOf(row: number): string {
  const two = (count: number): string => String(count).padStart(2, '0');
  return `10:${two(Math.floor(row / 600))}:${two(Math.floor(row / 10) % 60)}.${row % 10}`;
}

describe('channels that take turns', () => {
  it('have the rows of their names, in order', async () => {
    await fc.assert(
      fc.asyncProperty(file, async (made) => {
        const text = textOf(made);
        const outcome = await readCapture(bytesSource('generated.csv', text, 4096), { choice: null });
        if (!outcome.ok) throw new Error(outcome.problem.what);
        const rows = Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true }).data;
        const told = rows.map(({ Name = '', Value = '', Unit = '' }, index) => ({ Name, Value, Unit, index }));
        const named = told.filter(({ Name }) => Name !== '');
        const { channels, warnings } = outcome.value.capture;
        expect(channels.map((channel) => channel.name)).toEqual([...new Set(named.map(({ Name }) => Name))]);
        for (const { name: own, values, time, fileUnit } of channels) {
          const mine = named.filter(({ Name }) => Name === own);
          expect(Array.from(values)).toEqual(mine.map(({ Value }) => Number(Value)));
          mine.forEach(({ index }, i) => {
            expect(timeAt(time, i)).toBeCloseTo(index / 10, 6);
          });
          expect(fileUnit).toBe(mine.find(({ Unit }) => Unit !== '')?.Unit ?? null);
        }
        const skipped = warnings.find(({ id }) => id === 'rowsSkipped');
        expect(skipped?.count ?? 0).toBe(rows.length - named.length);
        expect(skipped?.detail ?? 'without a time, a name or a number').toContain('without a time, a name or a number');
      }),
      { numRuns: 150 },
    );
  });
});

describe('turnsFrom', () => {
  const turns = (names: string, row = 0) =>
    turnsFrom(
      Float64Array.from(names, (letter) => letter.charCodeAt(0)),
      0,
      1,
      row,
      names.length,
    );

  it('counts the whole rounds until another channel comes', () => {
    expect(turns('abcabcabcab')).toEqual({ round: 3, rounds: 3 });
    expect(turns('abcabcacbacb')).toEqual({ round: 3, rounds: 2 });
    expect(turns('aaaab')).toEqual({ round: 1, rounds: 4 });
    expect(turns('xabab', 1)).toEqual({ round: 2, rounds: 2 });
  });

  it('finds none where a channel comes twice in a round, or never again', () => {
    expect(turns('abbabbabb').rounds).toBe(0);
    expect(turns('abcdef').rounds).toBe(0);
    expect(turns('a').rounds).toBe(0);
  });

  it('does not look for rounds of more than 64', () => {
    const letters = (count: number) => Array.from({ length: count }, (_, k) => String.fromCharCode(200 + k)).join('');
    expect(turns(letters(64).repeat(3))).toEqual({ round: 64, rounds: 3 });
    expect(turns(letters(65).repeat(3)).rounds).toBe(0);
  });
});
