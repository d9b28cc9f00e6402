// Rows that are no rows, in the middle of a good recording: what can be read is read, and the rest is counted.

import { describe, expect, it } from 'vitest';
import { readCapture } from '../../../../core/reading/readCapture.ts';

const encoder = new TextEncoder();
const GOOD = 30_000;
const good = encoder.encode(
  `Time (s),RPM\n${Array.from({ length: GOOD }, (_, i) => `${(i / 10).toFixed(1)},${800 + (i % 900)}\n`).join('')}`,
);
const MIB = 1024 * 1024;

async function read(...parts: readonly Uint8Array[]) {
  const source = {
    name: 'huge.csv',
    bytes: null,
    rereadable: true,
    async *chunks() {
      yield* parts;
    },
  };
  const outcome = await readCapture(source, { choice: null });
  if (!outcome.ok) throw new Error(outcome.problem.what);
  return outcome.value.capture;
}

const filled = (letter: string) => new Uint8Array(3 * MIB).fill(letter.charCodeAt(0));

describe('a good recording with', () => {
  it.each([
    ['a line of megabytes', 'x'],
    ['megabytes of quotes', '"'],
    ['megabytes of delimiters', ','],
    ['megabytes of zeros', '\u0000'],
  ])('%s behind it keeps its rows and says that something was left out', async (_, letter) => {
    const { rows, channels, warnings } = await read(good, filled(letter), filled(letter));
    expect(rows).toBe(GOOD);
    expect(channels[0]?.facts.finite).toBe(GOOD);
    expect(warnings.map(({ id }) => id)).toSatisfy(
      (ids: string[]) => ids.includes('rowsSkipped') || ids.includes('truncated'),
    );
  });

  it('a quote that never closes loses only the row it stands in', async () => {
    const { rows } = await read(good, encoder.encode('"'), good.subarray(13));
    expect(rows).toBeGreaterThanOrEqual(2 * GOOD - 1);
  });

  it('ten thousand columns in one row counts it as one', async () => {
    const { rows, warnings } = await read(
      good,
      encoder.encode(`3000.0,900${',1'.repeat(10_000)}\n`),
      encoder.encode('3000.1,900\n'),
    );
    expect(rows).toBe(GOOD + 2);
    expect(warnings).toMatchObject([{ id: 'unreadableCells', count: 1 }]);
  });
});
