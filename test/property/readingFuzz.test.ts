// Any bytes give a capture that keeps its promises, or one clear refusal: no crash, no hang. A thousand inputs in the
// everyday run; FC_RUNS=20000 is the nightly one, FC_SEED draws others.

import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { gzipSync, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import type { Capture } from '../../core/capture/capture.ts';
import { sampleCount, timeAt } from '../../core/capture/timeBase.ts';
import { WARNING_IDS } from '../../core/capture/warnings.ts';
import type { Outcome } from '../../core/reading/problem.ts';
import { problemLine } from '../../core/reading/problem.ts';
import { type ReadCapture, readCapture } from '../../core/reading/readCapture.ts';
import { bytesSource } from '../support/bytesSource.ts';
import { mutate, mutation } from '../support/mutateBytes.ts';

const RUNS = Number(process.env.FC_RUNS ?? 1000);
const FOLDER = new URL('../fixtures/layouts/', import.meta.url);

const seeds: Uint8Array[] = readdirSync(FOLDER, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && entry.name !== 'README.md')
  .map((entry) => new Uint8Array(readFileSync(`${entry.parentPath}/${entry.name}`)));

const seed = fc.constantFrom(...seeds);
const packed = fc.oneof(
  { weight: 6, arbitrary: seed },
  { weight: 1, arbitrary: seed.map((bytes) => gzipSync(bytes)) },
  { weight: 1, arbitrary: seed.map((bytes) => zipSync({ 'drive.csv': bytes })) },
);
const mutatedText = fc
  .tuple(seed, fc.array(mutation, { minLength: 1, maxLength: 6 }))
  .map(([bytes, changes]) => changes.reduce(mutate, bytes));
const mutated = fc
  .tuple(packed, fc.array(mutation, { minLength: 1, maxLength: 6 }))
  .map(([bytes, changes]) => changes.reduce(mutate, bytes));
/** Mutated first and packed afterwards, so that the damage is not caught by a check sum. */
const packedAfter = fc
  .tuple(mutated, fc.constantFrom('gzip', 'zip'))
  .map(([bytes, how]) => (how === 'gzip' ? gzipSync(bytes) : zipSync({ a: bytes })));
const spliced = fc
  .tuple(seed, seed, fc.nat({ max: 1000 }))
  .map(([a, b, at]) => Uint8Array.of(...a.subarray(0, at % (a.length + 1)), ...b));
/** Grids of the cells that matter, without any sense. */
const cell = fc.constantFrom(
  '1',
  '0.45',
  '-',
  '',
  'x',
  '12:00:00',
  '2024-02-29T00:00:00Z',
  '1,5',
  '"a,b"',
  'V',
  '88 °C',
  'OFF',
  '1e5',
  'Time',
  'B1S1',
  '1.234.567',
);
const grid = fc
  .tuple(
    fc.array(fc.array(cell, { minLength: 1, maxLength: 6 }), { minLength: 1, maxLength: 30 }),
    fc.constantFrom(',', ';', '\t', '|', ' '),
    fc.constantFrom('\n', '\r\n', '\r'),
  )
  .map(([rows, delimiter, lineEnd]) => new TextEncoder().encode(rows.map((row) => row.join(delimiter)).join(lineEnd)));

const anything = fc.oneof(
  { weight: 6, arbitrary: mutated },
  { weight: 1, arbitrary: packedAfter },
  { weight: 1, arbitrary: spliced },
  { weight: 2, arbitrary: grid },
  { weight: 1, arbitrary: fc.uint8Array({ maxLength: 400 }) },
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 300 }).map((text) => new TextEncoder().encode(text)) },
);

function checkWords(words: string): void {
  expect(words).not.toMatch(/undefined|\bNaN\b|\[object/);
}

function checkCapture({ channels, warnings, durationS, rows }: Capture): void {
  expect(durationS).toBeGreaterThanOrEqual(0);
  expect(Number.isFinite(durationS)).toBe(true);
  expect(rows).toBeGreaterThan(0);
  expect(new Set(channels.map(({ id }) => id)).size).toBe(channels.length);
  for (const { values, time, facts } of channels) {
    expect(values.length).toBe(sampleCount(time));
    for (let i = 1; i < values.length; i++) expect(timeAt(time, i)).toBeGreaterThanOrEqual(timeAt(time, i - 1));
    for (const fact of Object.values(facts)) expect(Number.isFinite(fact)).toBe(true);
  }
  for (const { id, detail, count } of warnings) {
    expect(WARNING_IDS).toContain(id);
    expect(detail).toMatch(/\.$/);
    expect(count).toBeGreaterThan(0);
  }
}

function checkOutcome(outcome: Outcome<ReadCapture>, name: string): void {
  if (outcome.ok) {
    checkCapture(outcome.value.capture);
    if (outcome.value.question !== null) checkWords(outcome.value.question.words);
    return;
  }
  const { problem } = outcome;
  expect(problem.where).toContain(name);
  expect(problem.what).toMatch(/^[A-Z].*\.$/);
  expect(problem.doNext).toMatch(/^[A-Za-z].*\.?$/);
  checkWords(problemLine(problem).replaceAll(/“[^”]*”/g, ''));
}

describe('any bytes', () => {
  it('are a capture or a refusal, never a crash', { timeout: 20_000 + RUNS * 60 }, async () => {
    await fc.assert(
      fc.asyncProperty(anything, fc.integer({ min: 1, max: 500 }), async (bytes, chunkBytes) => {
        checkOutcome(await readCapture(bytesSource('fuzz.dat', bytes, chunkBytes), { choice: null }), 'fuzz.dat');
      }),
      { numRuns: RUNS },
    );
  });

  it('give the same, whatever the chunks', { timeout: 20_000 + RUNS * 60 }, async () => {
    await fc.assert(
      fc.asyncProperty(fc.oneof(mutatedText, grid), fc.integer({ min: 1, max: 60 }), async (bytes, chunkBytes) => {
        const whole = await readCapture(bytesSource('fuzz.dat', bytes, bytes.length + 1), { choice: null });
        expect(await readCapture(bytesSource('fuzz.dat', bytes, chunkBytes), { choice: null })).toEqual(whole);
      }),
      { numRuns: Math.ceil(RUNS / 5) },
    );
  });
});
