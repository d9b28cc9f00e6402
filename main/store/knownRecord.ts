import type { VehicleRecord } from '../../core/record/schema.ts';
import { listEarlier } from './earlierSaves.ts';
import type { FileLayer } from './fileLayer.ts';
import { openSave, readBytes, type VehicleFolder } from './vehicleFolder.ts';

/**
 * A vehicle's record without opening the vehicle; 'none' where nothing was ever saved, 'unreadable' where it cannot be used and
 * there is an earlier save to go back to, 'lost' where no save of it can be read.
 */
export type KnownRecord = VehicleRecord | 'none' | 'unreadable' | 'lost';

/** What is kept in a vehicle's folder. Never rejects. */
export async function knownRecord(files: FileLayer, folder: VehicleFolder): Promise<KnownRecord> {
  const newest = await readBytes(files, folder.record).catch(() => 'refused' as const);
  if (newest === null) {
    const earlier = await files.list(folder.generations).catch((): readonly string[] => []);
    if (earlier.length === 0) return 'none';
  }
  const save = newest === null || newest === 'refused' ? null : openSave(newest.bytes);
  if (save?.read.ok) return save.read.value.record;
  return (await listEarlier(files, folder)).length === 0 ? 'lost' : 'unreadable';
}
