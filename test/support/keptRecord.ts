// The kept record of the newest version, read by zod alone and not by the door that other tests put to the proof.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type VehicleRecord, vehicleRecordSchema } from '../../core/record/schema.ts';

/** A fresh copy of test/fixtures/records/v3.json: an invented van with one of everything. */
export function keptRecord(): VehicleRecord {
  const text = readFileSync(join(import.meta.dirname, '..', 'fixtures', 'records', 'v3.json'), 'utf8');
  return vehicleRecordSchema.parse(JSON.parse(text));
}
