import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { headerChoiceSchema } from '../../../../core/record/headerChoice.ts';
import { readRecord } from '../../../../core/record/readRecord.ts';
import { RECORD_VERSION } from '../../../../core/record/schema.ts';
import { vehicleRecord } from '../../../property/recordArbitraries.ts';

const KEPT = readFileSync(join(import.meta.dirname, '../../../fixtures/records/v3.json'), 'utf8');

/** The kept record with something changed at a path. */
function changed(path: readonly string[], value: unknown): string {
  const record: unknown = JSON.parse(KEPT);
  let at: unknown = record;
  for (const step of path.slice(0, -1)) at = Reflect.get(Object(at), step);
  Reflect.set(Object(at), path.at(-1) ?? '', value);
  return JSON.stringify(record);
}

const UNDONE = ['captures', 'c1', 'columnChoice'];
const CHOICE = { headerKey: 'k', timeColumn: null, rateHz: null, columns: [] };

const problemOf = (text: string) => {
  const read = readRecord(text, 'Van 14');
  return read.ok ? null : read.problem;
};

describe('the door for records', () => {
  test('what was saved comes back as it was', () => {
    fc.assert(
      fc.property(vehicleRecord, (record) => {
        expect(readRecord(JSON.stringify(record), 'x')).toEqual({
          ok: true,
          value: { record: JSON.parse(JSON.stringify(record)), newer: null },
        });
      }),
    );
  });

  test.each([
    ['an empty file', '', 'recordNotJson'],
    ['a picture', '\u0089PNG\r\n', 'recordNotJson'],
    ['a cut record', KEPT.slice(0, -40), 'recordNotJson'],
    ['a list', '[]', 'notARecord'],
    ['another JSON document', '{"format":"something else","version":1}', 'notARecord'],
    ['a version that is no version', '{"format":"tailtrace-vehicle","version":1.5}', 'notARecord'],
    ['an unknown field', changed(['surprise'], 1), 'recordDamaged'],
    ['a window that ends before it starts', changed(['windows', 'w1', 'endS'], -5), 'recordDamaged'],
    ['an entry under another key', changed(['notes', 'other'], { ...JSON.parse(KEPT).notes.n1 }), 'recordDamaged'],
    ['a code that is none', changed(['troubleCodes', 't1', 'code'], 'P04'), 'recordDamaged'],
    ['a repair that is none', changed(UNDONE, { ...CHOICE, asWritten: ['gap'] }), 'recordDamaged'],
    ['an empty list of repairs', changed(UNDONE, { ...CHOICE, asWritten: [] }), 'recordDamaged'],
    ['a time without its zone', changed(['createdAt'], '2026-11-24T08:00:00'), 'recordDamaged'],
  ])('refuses %s in three parts', (_, text, id) => {
    const problem = problemOf(text);
    expect(problem?.id).toBe(id);
    expect(problem?.where).toBe('Van 14');
    expect(problem?.what).toMatch(/^[A-Z].*\.$/);
    expect(problem?.doNext).toMatch(/^[A-Z].*\.$/);
  });

  test('takes undone repairs with a capture, and never for all files with its header', () => {
    const choice = { ...CHOICE, asWritten: ['secondRecording', 'duplicateTimes'] };
    const read = readRecord(changed(UNDONE, choice), 'Van 14');
    expect(read.ok && read.value.record.captures.c1?.columnChoice).toEqual(choice);
    expect(headerChoiceSchema.safeParse(CHOICE).success).toBe(true);
    expect(headerChoiceSchema.safeParse(choice).success).toBe(false);
  });

  test('names the damaged place', () => {
    expect(problemOf(changed(['windows', 'w1', 'kind'], 'gallop'))?.what).toBe(
      'This record is damaged at "windows/w1/kind".',
    );
  });

  test('T-SAVE-9: a newer record with unknown fields is shown for reading, with both versions, and is not changed', () => {
    const text = changed(['version'], RECORD_VERSION + 1);
    const newer: { windows: { w1: Record<string, unknown> } } & Record<string, unknown> = JSON.parse(text);
    newer.hallmark = { deep: [1] };
    newer.windows.w1.colour = 'green';
    const read = readRecord(JSON.stringify(newer), 'Van 14');
    expect(read.ok && read.value.newer).toEqual({ found: RECORD_VERSION + 1, known: RECORD_VERSION });
    expect(read.ok && read.value.record).toEqual(JSON.parse(KEPT));
  });

  test('T-SAVE-9: a newer record whose known parts mean something else is refused, with both versions', () => {
    const problem = problemOf(JSON.stringify({ ...JSON.parse(KEPT), version: 9, windows: [] }));
    expect(problem?.id).toBe('recordTooNew');
    expect(problem?.what).toContain('form 9');
    expect(problem?.what).toContain(`up to ${RECORD_VERSION}`);
  });
});
