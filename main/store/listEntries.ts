import { basename, dirname, join } from 'node:path';
import type { VehicleEntry } from '../../core/bridge/shellMessages.ts';
import type { VehicleRecord } from '../../core/record/schema.ts';
import type { FileLayer } from './fileLayer.ts';
import { youngestFirst } from './generations.ts';
import { lost, refusedByDisk } from './recordProblems.ts';
import { FOLDER_NAME, folderNamed, openSave, type VehicleFolder, vehicleFolder } from './vehicleFolder.ts';

/**
 * Every vehicle that is kept, last saved first. One whose newest save is damaged is listed by its youngest good one, so
 * that opening it can offer the way back; one of which no save can be read stays in the list and says so. Never rejects.
 */
export async function listEntries(files: FileLayer, vehicles: string): Promise<VehicleEntry[]> {
  const names = await files.list(vehicles).catch((): readonly string[] => []);
  const entries: VehicleEntry[] = [];
  for (const name of names) {
    if (!FOLDER_NAME.test(name)) continue;
    const entry = await entryOf(files, folderNamed(vehicles, name));
    if (entry !== null) entries.push(entry);
  }
  return entries.sort((a, b) => (a.savedAt < b.savedAt ? 1 : -1));
}

async function entryOf(files: FileLayer, folder: VehicleFolder): Promise<VehicleEntry | null> {
  const earlier = youngestFirst(await files.list(folder.generations).catch(() => []));
  for (const path of [folder.record, ...earlier.map((name) => join(folder.generations, name))]) {
    try {
      const save = openSave(await files.readWhole(path));
      if (save?.read.ok) return entryFrom(save.read.value.record, save.savedAt);
    } catch {
      // not there: the next older one may be
    }
  }
  return damagedEntry(files, folder, earlier.length > 0);
}

/** A vehicle of which no save can be read; null where nothing is kept: it was deleted, or never saved. */
async function damagedEntry(
  files: FileLayer,
  folder: VehicleFolder,
  hasEarlier: boolean,
): Promise<VehicleEntry | null> {
  const there = await files.stat(folder.record).catch(() => null);
  if (there === null && !hasEarlier) return null;
  const newest = await files.readWhole(folder.record).catch(() => null);
  const made = madeOut(newest, folder);
  return {
    id: made.id ?? basename(folder.path),
    name: made.name ?? 'A damaged vehicle',
    archived: false,
    savedAt: new Date(there?.modifiedMs ?? 0).toISOString(),
    captures: 0,
    sample: false,
    damaged: there !== null && newest === null ? refusedByDisk(folder) : lost(folder),
  };
}

/** What damaged bytes still tell. An id is taken only where the folder, which is named after it, says that it is the one. */
function madeOut(
  bytes: Uint8Array | null,
  folder: VehicleFolder,
): { readonly id: string | null; readonly name: string | null } {
  const text = Buffer.from(bytes ?? []).toString('utf8');
  const id = /"id":"([^"\\]{1,64})"/.exec(text)?.[1] ?? null;
  const name = /"identity":\{"name":"([^"\\]{1,200})"/.exec(text)?.[1] ?? null;
  return { id: id !== null && vehicleFolder(dirname(folder.path), id).path === folder.path ? id : null, name };
}

function entryFrom(record: VehicleRecord, savedAt: string): VehicleEntry {
  const captures = Object.values(record.captures);
  return {
    id: record.id,
    name: record.identity.name,
    archived: record.archived,
    savedAt,
    captures: captures.length,
    sample: captures.some((capture) => capture.sample),
  };
}
