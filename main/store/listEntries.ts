import { join } from 'node:path';
import type { VehicleEntry } from '../../core/bridge/shellMessages.ts';
import type { VehicleRecord } from '../../core/record/schema.ts';
import type { FileLayer } from './fileLayer.ts';
import { youngestFirst } from './generations.ts';
import { FOLDER_NAME, folderNamed, openSave, type VehicleFolder } from './vehicleFolder.ts';

/**
 * Every vehicle that can be opened, last saved first. One whose newest save is damaged is listed by its youngest good
 * one, so that opening it can offer the way back. Never rejects.
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
  return null;
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
