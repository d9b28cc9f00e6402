import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonicalJson } from '../../../../core/record/canonical.ts';
import { evidenceOf } from '../../../../core/record/evidenceOf.ts';
import { type VehicleRecord, vehicleRecordSchema } from '../../../../core/record/schema.ts';
import { vehicleRecord } from '../../../property/recordArbitraries.ts';

const all = (captureId: string) => ({ key: captureId });

describe('what a record says that a vehicle is judged from', () => {
  it('T-EV-3: is the same, in the same order, after the record went through its canonical form', () => {
    fc.assert(
      fc.property(vehicleRecord, (record) => {
        const back: VehicleRecord = vehicleRecordSchema.parse(JSON.parse(canonicalJson(record)));
        const turned: VehicleRecord = {
          ...record,
          windows: Object.fromEntries(Object.entries(record.windows).reverse()),
          captures: Object.fromEntries(Object.entries(record.captures).reverse()),
          readings: Object.fromEntries(Object.entries(record.readings).reverse()),
          bricks: Object.fromEntries(Object.entries(record.bricks).reverse()),
        };
        const told = JSON.stringify(evidenceOf(record, all).captures.map(({ captureId }) => captureId));
        expect(JSON.stringify(evidenceOf(back, all).captures.map(({ captureId }) => captureId))).toBe(told);
        for (const other of [back, turned]) expect(evidenceOf(other, all)).toEqual(evidenceOf(record, all));
      }),
    );
  });

  it('leaves out a capture that is not at hand, with its windows', () => {
    fc.assert(
      fc.property(vehicleRecord, (record) => {
        const [gone] = Object.keys(record.captures);
        const { captures, readings } = evidenceOf(record, (id) => (id === gone ? null : { key: id }));
        expect(captures.map(({ captureId }) => captureId)).not.toContain(gone);
        for (const { captureId, windows } of captures) {
          for (const window of windows) expect(window.captureId).toBe(captureId);
        }
        expect(readings).toHaveLength(Object.keys(record.readings).length);
      }),
    );
  });
});
