// The contract of every layout: a newcomer's file is tested before they wrote a test.

import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LAYOUTS } from '../../../../core/reading/layouts/index.ts';
import type { Outcome } from '../../../../core/reading/problem.ts';
import { type ReadCapture, type ReadOptions, readCapture } from '../../../../core/reading/readCapture.ts';
import { bytesSource } from '../../../support/bytesSource.ts';

const FOLDER = new URL('../../../fixtures/layouts/', import.meta.url);
const CHUNKS = [1, 2, 3, 7, 64, 1000, 100_000];
/** Ids of the warnings that name an end which came too early. */
const CUT_SHORT = ['truncated', 'unfinished', 'droppedMessages', 'rowsSkipped', 'unreadableCells'];

interface Sample {
  readonly file: string;
  readonly bytes: Uint8Array;
}

function samplesOf(id: string): Sample[] {
  const folder = new URL(`${id}/`, FOLDER);
  return readdirSync(folder).map((file) => ({ file, bytes: new Uint8Array(readFileSync(new URL(file, folder))) }));
}

function read(
  name: string,
  bytes: Uint8Array,
  chunkBytes = 4096,
  options: Partial<ReadOptions> = {},
): Promise<Outcome<ReadCapture>> {
  return readCapture(bytesSource(name, bytes, chunkBytes), { choice: null, ...options });
}

async function captured(name: string, bytes: Uint8Array, chunkBytes?: number): Promise<ReadCapture> {
  const outcome = await read(name, bytes, chunkBytes);
  if (!outcome.ok) throw new Error(`${name}: ${outcome.problem.what}`);
  return outcome.value;
}

describe('the list of layouts', () => {
  it('has a folder of samples for each, and no folder without a layout', () => {
    const folders = readdirSync(FOLDER, { withFileTypes: true }).filter((entry) => entry.isDirectory());
    expect(folders.map(({ name }) => name).sort()).toEqual(LAYOUTS.map(({ id }) => id).sort());
  });
});

describe.each(LAYOUTS.map((layout) => [layout.id, layout] as const))('the layout %s', (id, layout) => {
  const samples = samplesOf(id).map((sample) => [sample.file, sample.bytes] as const);

  it('has samples and words for people', () => {
    expect(samples.length).toBeGreaterThan(0);
    expect(layout.words).toMatch(/^[A-Z].*[^.]$/);
  });

  it.each(samples)('reads %s, and it alone does', async (file, bytes) => {
    const { capture } = await captured(file, bytes);
    expect(capture.layout.id).toBe(id);
    expect(capture.channels.length).toBeGreaterThan(0);
    expect(capture.bytes).toBe(bytes.length);
  });

  it.each(samples)('gives the same capture of %s whole and in chunks of any size', async (file, bytes) => {
    const whole = await captured(file, bytes, bytes.length);
    for (const chunkBytes of CHUNKS) expect(await captured(file, bytes, chunkBytes)).toEqual(whole);
  });

  it.each(samples)('does not change the bytes of %s', async (file, bytes) => {
    const copy = bytes.slice();
    await captured(file, copy, 50);
    expect(copy).toEqual(bytes);
  });

  it.each(samples)('lays the columns and times of %s in memory that threads share', async (file, bytes) => {
    for (const { time, values } of (await captured(file, bytes)).capture.channels) {
      expect(values.buffer).toBeInstanceOf(SharedArrayBuffer);
      if (time.kind === 'listed') expect(time.timesS.buffer).toBeInstanceOf(SharedArrayBuffer);
    }
  });

  it.each(samples)('reads %s the same twice', async (file, bytes) => {
    expect(await captured(file, bytes)).toEqual(await captured(file, bytes));
  });

  it.each(samples)(
    'reads what is left of %s cut at any byte, with a named warning, or refuses it in words',
    async (file, bytes) => {
      const whole = (await captured(file, bytes)).capture;
      for (let end = 0; end < bytes.length; end++) {
        const outcome = await read(file, bytes.subarray(0, end));
        if (!outcome.ok) {
          expect(outcome.problem.where).toContain(file);
          expect(outcome.problem.doNext).toMatch(/^\w.+\.$/);
          continue;
        }
        const { rows, warnings } = outcome.value.capture;
        expect(rows).toBeLessThanOrEqual(whole.rows);
        const atLineEnd =
          bytes[end - 1] === 10 ||
          bytes[end - 1] === 13 ||
          bytes[end] === 10 ||
          (bytes[end - 1] === 0 && bytes[end - 2] === 10);
        if (!atLineEnd && bytes.includes(10))
          expect({ end, ids: warnings.map((warning) => warning.id) }).toSatisfy(namesTheCut);
      }
    },
  );

  it.each(samples)('stops reading %s as soon as it is cancelled', async (file, bytes) => {
    let asked = 0;
    const outcome = await read(file, bytes, 32, { isCancelled: () => ++asked > 1 });
    expect(outcome).toMatchObject({ ok: false, problem: { id: 'cancelled', where: file } });
  });

  it.each(samples)('tells how far it is with %s', async (file, bytes) => {
    const seen: number[] = [];
    await read(file, bytes, 100, { onProgress: ({ bytesRead }) => seen.push(bytesRead) });
    expect(seen[seen.length - 1]).toBe(bytes.length);
    expect(seen).toEqual([...seen].sort((a, b) => a - b));
  });

  it('looks at any bytes without a fuss', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 600 }), fc.boolean(), (bytes, whole) => {
        const sure = layout.sniff({ name: 'any', bytes, whole });
        expect(sure).toBeGreaterThanOrEqual(0);
        expect(sure).toBeLessThanOrEqual(1);
      }),
    );
  });
});

function namesTheCut({ ids }: { readonly ids: readonly string[] }): boolean {
  return ids.some((id) => CUT_SHORT.includes(id));
}
