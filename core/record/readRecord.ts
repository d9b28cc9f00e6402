// The one door for records: text or a parsed value from disk, clipboard or bundle goes in, a record of the newest form or
// a refusal comes out. Inside the program nobody checks again.

import type { z } from 'zod';
import type { Outcome } from '../reading/problem.ts';
import { type JsonFault, parseGuardedJson } from './guardedJson.ts';
import { type AnyRecord, migrate } from './migrations/index.ts';
import { RECORD_VERSION, type VehicleRecord, vehicleRecordSchema } from './schema.ts';

/** A record that passed the door. */
export interface ReadRecord {
  readonly record: VehicleRecord;
  /**
   * Set where a newer version of the program wrote it: the version found and the newest known here. Then `record` holds
   * what is understood, is for looking at only, and must never be saved over what was read.
   */
  readonly newer: { readonly found: number; readonly known: number } | null;
}

/** Far above any record the program makes: 20,000 characters a note leave room for a thousand of them. */
const LIMITS = { characters: 32 * 1024 * 1024, depth: 32 };

/** A newer record may hold this many fields that are not known here; with more it is a file for its own version only. */
const MOST_UNKNOWN = 10_000;

/** Reads a record from text. `where` names the file as the person knows it. Never throws. */
export function readRecord(text: string, where: string): Outcome<ReadRecord> {
  const json = parseGuardedJson(text, LIMITS);
  return json.ok ? readRecordValue(json.value, where) : refusal('recordNotJson', faultWords(json.fault), where);
}

/** The same for a value that came out of JSON that was looked over already. Never throws; leaves `value` alone. */
export function readRecordValue(value: unknown, where: string): Outcome<ReadRecord> {
  if (!isAnyRecord(value)) return refusal('notARecord', 'This is not the record of a vehicle.', where);
  if (value.version > RECORD_VERSION) return readNewer(value, where);
  const read = vehicleRecordSchema.safeParse(migrated(value));
  if (read.success) return { ok: true, value: { record: read.data, newer: null } };
  return refusal('recordDamaged', `This record is damaged at ${firstPlace(read.error)}.`, where);
}

/** A step that stumbles over a damaged old record leaves it as it is, and the schema then says where it is damaged. */
function migrated(value: AnyRecord): AnyRecord {
  try {
    return migrate(value);
  } catch {
    return value;
  }
}

function isAnyRecord(value: unknown): value is AnyRecord {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return false;
  if (!('version' in value) || !('format' in value) || value.format !== 'tailtrace-vehicle') return false;
  return typeof value.version === 'number' && Number.isInteger(value.version) && value.version >= 1;
}

/** Takes fields that are not known here out of a copy, until what is left fits or something known does not. */
function readNewer(value: AnyRecord, where: string): Outcome<ReadRecord> {
  const found = value.version;
  const copy: unknown = JSON.parse(JSON.stringify({ ...value, version: RECORD_VERSION }));
  for (let taken = 0; taken < MOST_UNKNOWN; ) {
    const read = vehicleRecordSchema.safeParse(copy);
    if (read.success) return { ok: true, value: { record: read.data, newer: { found, known: RECORD_VERSION } } };
    const before = taken;
    for (const issue of read.error.issues) {
      if (issue.code !== 'unrecognized_keys') continue;
      for (const key of issue.keys) taken += removeField(copy, issue.path, key);
    }
    if (taken === before) break;
  }
  return {
    ok: false,
    problem: {
      id: 'recordTooNew',
      what: `A newer version of Tailtrace wrote this record: it has form ${found}, and this version knows forms up to ${RECORD_VERSION}.`,
      where,
      doNext: 'Open it with that newer version; nothing in it was changed.',
    },
  };
}

/** Takes `key` out of the object at `path`. Gives 1 where it was there, else 0. */
function removeField(whole: unknown, path: readonly PropertyKey[], key: string): number {
  let at: unknown = whole;
  for (const step of path) at = typeof at === 'object' && at !== null ? Reflect.get(at, step) : undefined;
  if (typeof at !== 'object' || at === null || !Object.hasOwn(at, key)) return 0;
  return Reflect.deleteProperty(at, key) ? 1 : 0;
}

function firstPlace(error: z.ZodError): string {
  const path = error.issues[0]?.path ?? [];
  return path.length === 0 ? 'its top' : `"${path.map(String).join('/')}"`;
}

function faultWords({ kind, at, found }: JsonFault): string {
  const place = `character ${at + 1}`;
  const words: Record<JsonFault['kind'], string> = {
    tooLarge: 'This file is larger than the record of any vehicle.',
    tooDeep: `This file is nested deeper than the record of any vehicle, at ${place}.`,
    notJson: 'This file is cut off or is not JSON text.',
    doubledKey: `The field "${found}" stands twice at ${place}.`,
    forbiddenKey: `The field name "${found}" at ${place} is not allowed.`,
    loneSurrogate: `Half a character stands at ${place}.`,
    notFinite: `The number ${found} at ${place} is too large.`,
  };
  return words[kind];
}

function refusal(id: string, what: string, where: string): Outcome<ReadRecord> {
  return {
    ok: false,
    problem: { id, what, where, doNext: 'Choose an earlier save of this vehicle, or another file.' },
  };
}
