// Captures that came in a bundle: read-only copies in the folder of their vehicle, each called by its SHA-256.

import { join } from 'node:path';
import type { FileLayer } from './fileLayer.ts';
import { FOLDER_NAME, folderNamed, type VehicleFolder } from './vehicleFolder.ts';

const SHA256 = /^[0-9a-f]{64}$/;

/** Where a capture of this hash is kept in any vehicle's folder, or null. Never rejects. */
export async function findKeptCapture(files: FileLayer, vehicles: string, sha256: string): Promise<string | null> {
  if (!SHA256.test(sha256)) return null; // only hashes become paths
  for (const name of await files.list(vehicles).catch((): readonly string[] => [])) {
    if (!FOLDER_NAME.test(name)) continue;
    const path = join(folderNamed(vehicles, name).captures, sha256);
    const there = await files.stat(path).then(
      ({ regular }) => regular,
      () => false,
    );
    if (there) return path;
  }
  return null;
}

/** Removes the captures of a folder that holds no vehicle: the program was ended before its record was saved. */
export async function sweepOrphans(files: FileLayer, folder: VehicleFolder): Promise<void> {
  for (const place of [folder.record, folder.generations, folder.setAside]) {
    const there = await files.stat(place).then(
      () => true,
      () => false,
    );
    if (there) return;
  }
  for (const name of await files.list(folder.captures).catch((): readonly string[] => [])) {
    if (SHA256.test(name)) await files.remove(join(folder.captures, name)).catch(() => {});
  }
}
