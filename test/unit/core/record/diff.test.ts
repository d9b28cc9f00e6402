import { describe, expect, test } from 'vitest';
import { applyDiff, diffRecords, isEmptyDiff, listChanges, squashDiffs } from '../../../../core/record/diff.ts';
import { addBrick, removeBrick } from '../../../../core/record/edits/bricks.ts';
import { renameVehicle, setArchived } from '../../../../core/record/edits/vehicle.ts';
import { newVehicle } from '../../../../core/record/newVehicle.ts';
import { vehicleRecordSchema } from '../../../../core/record/schema.ts';

const record = newVehicle({ id: 'v', name: 'Van 14', createdAt: '2026-11-24T08:00:00Z' });
const brick = { id: 'b1', bank: 1, position: 1, place: 'underfloor', beforeRearSensor: true } as const;
const withBrick = addBrick(brick).apply(record);

describe('diffs of a record', () => {
  test('every part that the schema knows is either compared or fixed for the life of a record', () => {
    // Signing adds, a look is a look: neither is ever undone.
    const fixed = ['format', 'version', 'id', 'createdAt', 'opinions', 'blindReading'];
    const compared = Object.keys(diffRecords(record, record));
    expect([...fixed, ...compared].sort()).toEqual(Object.keys(vehicleRecordSchema.shape).sort());
  });

  test('what happened is listed by path', () => {
    const other = renameVehicle('Van 15').apply(setArchived(true).apply(withBrick));
    expect(listChanges(diffRecords(record, other))).toEqual([
      { path: 'archived', what: 'updated' },
      { path: 'identity', what: 'updated' },
      { path: 'bricks/b1', what: 'added' },
    ]);
    expect(listChanges(diffRecords(withBrick, record))).toEqual([{ path: 'bricks/b1', what: 'removed' }]);
    expect(isEmptyDiff(diffRecords(withBrick, structuredClone(withBrick)))).toBe(true);
  });

  test('parts that did not change stay the same objects', () => {
    const applied = applyDiff(record, diffRecords(record, withBrick));
    expect(applied.identity).toBe(record.identity);
    expect(applied.windows).toBe(record.windows);
  });

  test('added and removed again leaves nothing; removed and added anew is an update', () => {
    const there = diffRecords(record, withBrick);
    const gone = diffRecords(withBrick, removeBrick('b1').apply(withBrick));
    expect(isEmptyDiff(squashDiffs(there, gone))).toBe(true);
    const other = addBrick({ ...brick, position: 2 }).apply(record);
    expect(listChanges(squashDiffs(gone, diffRecords(record, other)))).toEqual([
      { path: 'bricks/b1', what: 'updated' },
    ]);
  });

  test('an entry called like something every object inherits is an entry like any other', () => {
    const odd = addBrick({ ...brick, id: 'toString' }).apply(record);
    const diff = diffRecords(record, odd);
    expect(listChanges(diff)).toEqual([{ path: 'bricks/toString', what: 'added' }]);
    expect(applyDiff(record, diff)).toEqual(odd);
  });
});
