import { join } from 'node:path';
import type { Outcome } from '../../core/reading/problem.ts';
import { type FileLayer, faultCode } from './fileLayer.ts';
import { writeProblem } from './fileProblem.ts';
import { knownRecord } from './knownRecord.ts';
import { FOLDER_NAME, folderNamed, RECORD_PLACE, type VehicleFolder } from './vehicleFolder.ts';

/**
 * Removes every file of a vehicle, its record last (T-PRIV-4). Never rejects. Gives the hashes of its captures that no
 * other vehicle names. Empty folders stay; their names tell nothing.
 */
export async function removeVehicle(
  files: FileLayer,
  vehicles: string,
  folder: VehicleFolder,
): Promise<Outcome<readonly string[]>> {
  try {
    return { ok: true, value: await removeAll(files, vehicles, folder) };
  } catch (fault) {
    return { ok: false, problem: writeProblem(fault, RECORD_PLACE) };
  }
}

async function removeAll(files: FileLayer, vehicles: string, folder: VehicleFolder): Promise<string[]> {
  const own = await hashesOf(files, folder);
  for (const place of [folder.captures, folder.setAside, folder.generations]) {
    for (const name of await files.list(place).catch((): readonly string[] => []))
      await removeFile(files, join(place, name));
  }
  await removeFile(files, folder.view);
  await removeFile(files, folder.record);
  await files.syncFolder(folder.path).catch(() => {}); // where there is no folder, there is nothing to make last
  const others = new Set<string>();
  for (const name of await files.list(vehicles)) {
    if (!FOLDER_NAME.test(name)) continue;
    for (const sha256 of await hashesOf(files, folderNamed(vehicles, name))) others.add(sha256);
  }
  return own.filter((sha256) => !others.has(sha256));
}

async function hashesOf(files: FileLayer, folder: VehicleFolder): Promise<string[]> {
  const record = await knownRecord(files, folder);
  return typeof record === 'string' ? [] : Object.values(record.captures).map(({ sha256 }) => sha256);
}

async function removeFile(files: FileLayer, path: string): Promise<void> {
  await files.remove(path).catch((fault) => {
    if (faultCode(fault) !== 'ENOENT' && faultCode(fault) !== 'ENOTDIR') throw fault;
  });
}
