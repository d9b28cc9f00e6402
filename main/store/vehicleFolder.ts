// Where one vehicle's files lie, and how its record is read. Names of folders and files are made here from hashes and
// times, never from anything a person typed or a file brought along.

import { join } from 'node:path';
import type { Outcome } from '../../core/reading/problem.ts';
import { type ReadRecord, readRecordValue } from '../../core/record/readRecord.ts';
import type { FileLayer } from './fileLayer.ts';
import { faultCode } from './fileLayer.ts';
import { sha256Of, unseal } from './sealedRecord.ts';

export interface VehicleFolder {
  readonly path: string;
  /** The newest save. */
  readonly record: string;
  /** The look of its window. */
  readonly view: string;
  /** The saves behind the newest. */
  readonly generations: string;
  /** What must not be lost and may not be used: damaged bytes, and saves that met a change from outside. */
  readonly setAside: string;
  /** Captures that came in a bundle, each called by its SHA-256: they go when the vehicle goes. */
  readonly captures: string;
}

export function vehicleFolder(vehicles: string, id: string): VehicleFolder {
  return folderNamed(vehicles, sha256Of(id).slice(0, 32));
}

export function folderNamed(vehicles: string, name: string): VehicleFolder {
  const path = join(vehicles, name);
  return {
    path,
    record: join(path, 'record.json'),
    view: join(path, 'view.json'),
    generations: join(path, 'generations'),
    setAside: join(path, 'setAside'),
    captures: join(path, 'captures'),
  };
}

/** Names of vehicle folders, of all names in the folder of the vehicles. */
export const FOLDER_NAME = /^[0-9a-f]{32}$/;

/** Bytes of a file with their hash, or null where there is no such file. Rejects with the system's fault otherwise. */
export async function readBytes(
  files: FileLayer,
  path: string,
): Promise<{ readonly bytes: Uint8Array; readonly sha256: string } | null> {
  try {
    const bytes = await files.readWhole(path);
    return { bytes, sha256: sha256Of(bytes) };
  } catch (fault) {
    if (faultCode(fault) === 'ENOENT' || faultCode(fault) === 'ENOTDIR') return null;
    throw fault;
  }
}

/** Where a record lies, as the person knows it. */
export const RECORD_PLACE = 'the vehicle’s record';

/** A sealed save, opened; null where it is damaged. Never throws. */
export function openSave(bytes: Uint8Array): { readonly savedAt: string; readonly read: Outcome<ReadRecord> } | null {
  const content = unseal(bytes);
  return content === null ? null : { savedAt: content.savedAt, read: readRecordValue(content.record, RECORD_PLACE) };
}
