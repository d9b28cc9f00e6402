import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { canonicalJson } from '../../../../core/record/canonical.ts';
import { vehicleRecord } from '../../../property/recordArbitraries.ts';

const hashOf = (value: unknown) => createHash('sha256').update(canonicalJson(value)).digest('hex');

/** The same value with the keys of every object in another order. */
function shuffled(value: unknown, seed: number): unknown {
  if (Array.isArray(value)) return value.map((entry) => shuffled(entry, seed));
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).map(([key, inner]) => [key, shuffled(inner, seed)] as const);
  const turn = entries.length === 0 ? 0 : seed % entries.length;
  return Object.fromEntries([...entries.slice(turn), ...entries.slice(0, turn)].reverse());
}

describe('T-EV-1: canonical JSON of a record', () => {
  test('the same record has the same hash whatever the order of its keys', () => {
    fc.assert(
      fc.property(vehicleRecord, fc.nat(), (record, seed) => {
        const other = shuffled(record, seed);
        expect(hashOf(other)).toBe(hashOf(record));
      }),
      { numRuns: 1000 },
    );
  });

  test('it reads back as the same record', () => {
    fc.assert(
      fc.property(vehicleRecord, (record) => {
        const back: unknown = JSON.parse(canonicalJson(record));
        expect(canonicalJson(back)).toBe(canonicalJson(record));
      }),
    );
  });
});
