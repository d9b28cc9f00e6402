import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type AnyRecord, checkedMigrations, MIGRATIONS, migrate } from '../../../../core/record/migrations/index.ts';
import type { Migration } from '../../../../core/record/migrations/migration.ts';
import { readRecord } from '../../../../core/record/readRecord.ts';
import { RECORD_VERSION } from '../../../../core/record/schema.ts';

const step = (to: number): Migration => ({
  to,
  words: `step ${to}`,
  migrate: (old) => ({ ...old, [`from${to}`]: true }),
});
const KEPT = join(import.meta.dirname, '../../../fixtures/records');

describe('migrations', () => {
  test('a gap, a step out of order and a missing end are mistakes that stop the program at once', () => {
    expect(() => checkedMigrations([step(3)], 3)).toThrow('version 2');
    expect(() => checkedMigrations([step(2), step(4)], 4)).toThrow('version 3');
    expect(() => checkedMigrations([step(3), step(2)], 3)).toThrow('version 2');
    expect(() => checkedMigrations([step(2)], 3)).toThrow('do not lead to version 3');
    expect(checkedMigrations([step(2), step(3)], 3)).toHaveLength(2);
    expect(MIGRATIONS).toHaveLength(RECORD_VERSION - 1);
  });

  test('T-SAVE-10: an old record goes through each step it has not been through, and migrating twice equals once', () => {
    const steps = [step(2), step(3), step(4)];
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 6 }), fc.dictionary(fc.string(), fc.jsonValue()), (version, rest) => {
        const old: AnyRecord = { ...rest, version };
        const once = migrate(old, steps);
        expect(migrate(once, steps)).toEqual(once);
        expect(once.version).toBe(Math.max(version, 4));
        for (const { to } of steps) expect(once[`from${to}`] === true).toBe(version < to);
        expect(old).toEqual({ ...rest, version });
      }),
    );
  });

  test.each(readdirSync(KEPT))('T-SAVE-10: the kept %s still opens', (name) => {
    const read = readRecord(readFileSync(join(KEPT, name), 'utf8'), name);
    expect(read.ok && read.value.newer).toBe(null);
    expect(read.ok && Object.keys(read.value.record.windows)).not.toHaveLength(0);
  });

  test('every version has its kept file', () => {
    const versions = Array.from({ length: RECORD_VERSION }, (_, i) => `v${i + 1}.json`);
    expect(readdirSync(KEPT)).toEqual(versions);
  });
});
