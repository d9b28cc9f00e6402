// Outside oracle: pandas 1.5.3 by test/reference/pandasOracle.py. Where it is installed the script runs again, must say
// what is stored, and is asked about the sample drives too; where it is not, the stored values stand in.

import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import type { Channel } from '../../core/capture/channel.ts';
import { readCapture } from '../../core/reading/readCapture.ts';
import { convert } from '../../core/units/convert.ts';
import { bytesSource } from '../support/bytesSource.ts';

const number = z.number();
const schema = z.record(
  z.string(),
  z.object({
    rows: number,
    columns: z.array(
      z.object({
        heading: z.string(),
        count: number,
        min: number,
        max: number,
        sum: number,
        first: number,
        last: number,
      }),
    ),
  }),
);
type Tables = z.infer<typeof schema>;
type Column = Tables[string]['columns'][number];

const stored = schema.parse(JSON.parse(readFileSync(new URL('values/pandas.json', import.meta.url), 'utf8')));

/** What the script says here and now, or null where pandas is not installed. */
function askPandas(about: 'fixtures' | 'drives'): Tables | null {
  try {
    execFileSync('/usr/bin/python3', ['-c', 'import pandas'], { stdio: 'ignore' });
  } catch {
    return null;
  }
  const script = fileURLToPath(new URL('pandasOracle.py', import.meta.url));
  return schema.parse(
    JSON.parse(execFileSync('/usr/bin/python3', [script, about], { encoding: 'utf8', maxBuffer: 1 << 24 })),
  );
}

async function channelsOf(path: string): Promise<{ readonly rows: number; readonly channels: readonly Channel[] }> {
  const outcome = await readCapture(bytesSource(basename(path), new Uint8Array(readFileSync(path))), { choice: null });
  if (!outcome.ok) throw new Error(outcome.problem.what);
  return outcome.value.capture;
}

/** Values as the file writes them: 4-byte values by the seven digits they stand for, and in the file's unit. */
function written({ values, unit, fileUnit }: Channel): number[] {
  const plain = Array.from(values)
    .filter((value) => !Number.isNaN(value))
    .map((value) => Number(value.toPrecision(7)));
  return fileUnit === null
    ? plain
    : plain.map((value) => convert(value, unit === '1' ? fileUnit : unit, fileUnit) ?? value);
}

function summary(channel: Channel): Omit<Column, 'heading'> {
  const values = written(channel);
  return {
    count: values.length,
    min: Math.min(...values),
    max: Math.max(...values),
    sum: values.reduce((sum, value) => sum + value, 0),
    first: values[0] ?? Number.NaN,
    last: values[values.length - 1] ?? Number.NaN,
  };
}

async function compare(tables: Tables): Promise<void> {
  for (const [path, { rows, columns }] of Object.entries(tables)) {
    const capture = await channelsOf(path);
    expect(capture.rows, path).toBe(rows);
    for (const channel of capture.channels) {
      const column = columns.find(({ heading }) => heading.startsWith(channel.name));
      if (column === undefined) continue;
      const { heading, ...numbers } = column;
      const own = summary(channel);
      for (const [what, value] of Object.entries(numbers)) {
        const size = Math.max(1, Math.abs(value));
        expect(Number(Reflect.get(own, what)) / size, `${path}, ${heading}, ${what}`).toBeCloseTo(value / size, 6);
      }
    }
    expect(capture.channels.length, path).toBeGreaterThan(1);
  }
}

const LIVE = askPandas('fixtures');

describe('pandas', () => {
  it('says today what is stored, where it is installed', () => {
    expect(LIVE ?? stored).toEqual(stored);
  });

  it('reads the same columns with the same numbers from the fixtures', async () => {
    await compare(stored);
  });

  it('reads the same columns with the same numbers from the sample drives, where it is installed', async () => {
    await compare(askPandas('drives') ?? {});
  });
});
