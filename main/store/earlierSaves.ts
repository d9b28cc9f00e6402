import { join } from 'node:path';
import type { EarlierSave } from '../../core/bridge/shellMessages.ts';
import { atomicWrite } from './atomicWrite.ts';
import type { FileLayer } from './fileLayer.ts';
import { generationName, generationTime, superfluous, youngestFirst } from './generations.ts';
import { type SealedContent, sha256Of, unseal } from './sealedRecord.ts';
import type { VehicleFolder } from './vehicleFolder.ts';

/** Prefix by which a save in the set-aside folder is told from one in the generations. */
const ASIDE = 'aside-';

/** Good saves behind the newest, youngest first, damaged ones left out. Never rejects. */
export async function listEarlier(files: FileLayer, folder: VehicleFolder): Promise<EarlierSave[]> {
  const found: EarlierSave[] = [];
  for (const kind of ['saved', 'setAside'] as const) {
    const place = kind === 'saved' ? folder.generations : folder.setAside;
    for (const name of youngestFirst(await files.list(place).catch(() => []))) {
      const savedAt = generationTime(name);
      const good = await readSave(files, join(place, name));
      if (savedAt === null || good === null) continue;
      found.push({ generation: kind === 'saved' ? name : `${ASIDE}${name}`, savedAt, kind });
    }
  }
  return found.sort((a, b) => (a.savedAt < b.savedAt ? 1 : -1));
}

/** The content of an earlier save that `listEarlier` named, or null for any other string. */
export async function readEarlier(
  files: FileLayer,
  folder: VehicleFolder,
  generation: string,
): Promise<SealedContent | null> {
  const aside = generation.startsWith(ASIDE);
  const name = aside ? generation.slice(ASIDE.length) : generation;
  if (generationTime(name) === null) return null; // only names of our own making become paths
  return readSave(files, join(aside ? folder.setAside : folder.generations, name));
}

async function readSave(files: FileLayer, path: string): Promise<SealedContent | null> {
  try {
    return unseal(await files.readWhole(path));
  } catch {
    return null;
  }
}

/** Puts the newest save among the generations, before it is replaced. */
export async function keepGeneration(files: FileLayer, folder: VehicleFolder, newest: Uint8Array): Promise<void> {
  const content = unseal(newest);
  if (content === null) {
    await setAside(files, folder, newest, new Date(0).toISOString());
    return;
  }
  const path = join(folder.generations, generationName(content.savedAt, sha256Of(newest)));
  await files.makeFolder(folder.generations);
  try {
    // A second name costs nothing and cannot be half written: the replacing rename leaves these bytes as they are.
    await files.link(folder.record, path);
    await files.syncFolder(folder.generations);
  } catch {
    await atomicWrite(files, path, newest); // a file system without links, or the name is there already
  }
}

/** Keeps bytes that are not to be used and not to be lost, and says where. */
export async function setAside(
  files: FileLayer,
  folder: VehicleFolder,
  bytes: Uint8Array,
  savedAt: string,
): Promise<string> {
  const place = join(folder.setAside, generationName(savedAt, sha256Of(bytes)));
  await files.makeFolder(folder.setAside);
  await atomicWrite(files, place, bytes);
  return place;
}

/** Removes generations that are no longer needed. Never rejects: a save that is safe is not undone by a full trash. */
export async function pruneGenerations(files: FileLayer, folder: VehicleFolder, nowMs: number): Promise<void> {
  const names = await files.list(folder.generations).catch((): readonly string[] => []);
  for (const name of superfluous(names, nowMs)) {
    await files.remove(join(folder.generations, name)).catch(() => {});
  }
}
