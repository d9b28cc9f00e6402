import type { Problem } from '../../core/reading/problem.ts';
import { RECORD_VERSION, type VehicleRecord, vehicleRecordSchema } from '../../core/record/schema.ts';

export type OpenedRecord =
  | { readonly ok: true; readonly record: VehicleRecord; readonly newerVersion: number | null }
  | { readonly ok: false; readonly problem: Problem };

/** A newer record may hold this many fields that this version does not know; beyond it is shown by its own version only. */
const MOST_UNKNOWN = 10_000;

/**
 * The door for records from disk: any JSON value comes in, a record of today's form or a refusal goes out. Never throws.
 * What a newer version of the program made is shown as far as it is understood, and must not be saved over.
 */
export function openRecord(value: unknown): OpenedRecord {
  const version = versionOf(value);
  if (version === null) return refused();
  if (version > RECORD_VERSION) return openNewer(value, version);
  const read = vehicleRecordSchema.safeParse(value);
  return read.success ? { ok: true, record: read.data, newerVersion: null } : refused();
}

function versionOf(value: unknown): number | null {
  if (typeof value !== 'object' || value === null || !('version' in value)) return null;
  return typeof value.version === 'number' && Number.isInteger(value.version) ? value.version : null;
}

/** Takes fields that are not known out of a copy, until what is left fits or something known does not. */
function openNewer(value: unknown, version: number): OpenedRecord {
  const copy: unknown = structuredClone(value);
  if (typeof copy === 'object' && copy !== null) Object.assign(copy, { version: RECORD_VERSION });
  for (let taken = 0; taken < MOST_UNKNOWN; ) {
    const read = vehicleRecordSchema.safeParse(copy);
    if (read.success) return { ok: true, record: read.data, newerVersion: version };
    let progress = 0;
    for (const issue of read.error.issues) {
      if (issue.code !== 'unrecognized_keys') continue;
      for (const key of issue.keys) progress += removeField(copy, issue.path, key);
    }
    if (progress === 0) break;
    taken += progress;
  }
  return {
    ok: false,
    problem: {
      id: 'newerVersion',
      what: `This vehicle was saved by a newer version of the program (form ${version}; this one knows ${RECORD_VERSION}).`,
      where: 'the vehicle’s record',
      doNext: 'Open it with the newer version; nothing in it was changed.',
    },
  };
}

function removeField(whole: unknown, path: readonly PropertyKey[], key: string): number {
  let at: unknown = whole;
  for (const step of path) at = typeof at === 'object' && at !== null ? Reflect.get(at, step) : undefined;
  if (typeof at !== 'object' || at === null || !Object.hasOwn(at, key)) return 0;
  return Reflect.deleteProperty(at, key) ? 1 : 0;
}

function refused(): OpenedRecord {
  return {
    ok: false,
    problem: {
      id: 'damagedRecord',
      what: 'The newest save of this vehicle cannot be read.',
      where: 'the vehicle’s record',
      doNext: 'Choose one of its earlier saves; the unreadable one is kept aside.',
    },
  };
}
