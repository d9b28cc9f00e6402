// The vehicles on disk: one sealed JSON document each, replaced whole, with its earlier saves behind it.

import type { z } from 'zod';
import {
  type EarlierSave,
  type loadedVehicleSchema,
  type savedSchema,
  type VehicleEntry,
  viewStateSchema,
} from '../../core/bridge/shellMessages.ts';
import type { Outcome, Problem } from '../../core/reading/problem.ts';
import type { VehicleRecord } from '../../core/record/schema.ts';
import { atomicWrite, type Patience, systemPatience } from './atomicWrite.ts';
import { keepGeneration, listEarlier, pruneGenerations, readEarlier, setAside } from './earlierSaves.ts';
import type { FileLayer } from './fileLayer.ts';
import { saveProblem, writeProblem } from './fileProblem.ts';
import { sweepOrphans } from './keptCaptures.ts';
import { keptFile } from './keptFile.ts';
import { type KnownRecord, knownRecord } from './knownRecord.ts';
import { listEntries } from './listEntries.ts';
import { changedOutside, damaged, madeByNewer, missing, notThere, Refused, unreadable } from './recordProblems.ts';
import { removeVehicle } from './removeVehicle.ts';
import { seal, sha256Of, unseal } from './sealedRecord.ts';
import { sweepTemporary } from './sweepTemporary.ts';
import {
  FOLDER_NAME,
  folderNamed,
  openSave,
  RECORD_PLACE,
  readBytes,
  type VehicleFolder,
  vehicleFolder,
} from './vehicleFolder.ts';

type LoadedVehicle = z.infer<typeof loadedVehicleSchema>;
type Saved = z.infer<typeof savedSchema>;
type ViewState = z.infer<typeof viewStateSchema>;

export interface VehicleStoreParts {
  /** The folder that holds a folder for each vehicle. */
  readonly folder: string;
  readonly files: FileLayer;
  nowMs(): number;
  readonly patience?: Patience;
}

/** What the store last saw of a record on disk: replacing anything else would lose somebody's work. */
interface Seen {
  readonly sha256: string;
  /** A newer version of the program wrote it: it is shown and left alone. */
  readonly newer: boolean;
}

export class VehicleStore {
  readonly #parts: VehicleStoreParts;
  readonly #seen = new Map<string, Seen>();
  readonly #asides = new Map<string, string>();
  readonly #turns = new Map<string, Promise<unknown>>();

  constructor(parts: VehicleStoreParts) {
    this.#parts = parts;
  }

  /** Makes the folder and clears what a killed program left. Call once, before anything else. */
  async start(): Promise<void> {
    const { files, folder, nowMs } = this.#parts;
    await files.makeFolder(folder);
    for (const name of await files.list(folder)) {
      if (!FOLDER_NAME.test(name)) continue;
      const vehicle = folderNamed(folder, name);
      const { path, generations, setAside: aside, captures } = vehicle;
      for (const place of [path, generations, aside, captures]) await sweepTemporary(files, place, nowMs());
      await sweepOrphans(files, vehicle);
    }
  }

  list(): Promise<VehicleEntry[]> {
    return listEntries(this.#parts.files, this.#parts.folder);
  }

  load(id: string): Promise<LoadedVehicle> {
    return this.#inTurn(id, () => this.#load(id));
  }

  known(id: string): Promise<KnownRecord> {
    return this.#inTurn(id, () => knownRecord(this.#parts.files, this.#folderOf(id)));
  }

  /**
   * Removes everything that is kept of a vehicle. The record goes last: where something cannot be removed, the vehicle is
   * still listed and can be deleted again. Gives the hashes of its captures that no other vehicle names.
   */
  remove(id: string): Promise<Outcome<readonly string[]>> {
    return this.#inTurn(id, () => this.#remove(id));
  }

  /** Folder for the captures of a vehicle that came in a bundle. */
  capturesFolder(id: string): string {
    return this.#folderOf(id).captures;
  }

  /** Resolves with saved true only when the record would survive a power cut. Never rejects. */
  save(record: VehicleRecord): Promise<Saved> {
    return this.#inTurn(record.id, () => this.#save(record));
  }

  saveView(id: string, view: ViewState): Promise<void> {
    return this.#inTurn(id, () => this.#viewFile(this.#folderOf(id)).write(view));
  }

  earlier(id: string): Promise<EarlierSave[]> {
    return this.#inTurn(id, () => listEarlier(this.#parts.files, this.#folderOf(id)));
  }

  /** Makes an earlier save the newest; what was the newest is kept, damaged or not. */
  restore(id: string, generation: string): Promise<LoadedVehicle> {
    return this.#inTurn(id, () => this.#restore(id, generation));
  }

  /** Resolves when nothing is being written. */
  async settle(): Promise<void> {
    await Promise.allSettled(this.#turns.values());
  }

  #folderOf(id: string): VehicleFolder {
    return vehicleFolder(this.#parts.folder, id);
  }

  #viewFile(folder: VehicleFolder) {
    return keptFile<ViewState>(this.#parts.files, folder.view, viewStateSchema, {});
  }

  /** One thing at a time for each vehicle. */
  #inTurn<R>(id: string, job: () => Promise<R>): Promise<R> {
    const before = this.#turns.get(id) ?? Promise.resolve();
    const turn = before.then(job, job);
    this.#turns.set(id, turn);
    return turn;
  }

  async #load(id: string): Promise<LoadedVehicle> {
    const folder = this.#folderOf(id);
    const notLoaded = async (problemOf: (earlier: readonly EarlierSave[]) => Problem): Promise<LoadedVehicle> => {
      const earlier = await listEarlier(this.#parts.files, folder);
      return { ok: false, problem: problemOf(earlier), earlier };
    };
    const newest = await readBytes(this.#parts.files, folder.record).catch(() => 'refused' as const);
    if (newest === 'refused') return notLoaded(unreadable);
    if (newest === null) return notLoaded(missing);
    const save = openSave(newest.bytes);
    if (save === null) return notLoaded((earlier) => damaged(folder, earlier.length));
    const { read } = save;
    if (!read.ok) return notLoaded(() => read.problem);
    const { record, newer } = read.value;
    this.#saw(id, { sha256: newest.sha256, newer: newer !== null });
    return {
      ok: true,
      record,
      view: await this.#viewFile(folder).read(),
      readOnly: newer !== null,
      notice: newer === null ? null : madeByNewer(),
    };
  }

  async #save(record: VehicleRecord): Promise<Saved> {
    const savedAt = new Date(this.#parts.nowMs()).toISOString();
    const bytes = seal(savedAt, record);
    try {
      return { saved: true, savedAt: await this.#replace(record, bytes, savedAt) };
    } catch (fault) {
      if (!(fault instanceof Refused)) {
        return { saved: false, problem: saveProblem(fault, `the record of ${record.identity.name}`) };
      }
      // Both are kept. Where even this fails, the window still holds the change and shows that it is not saved.
      if (fault.problem.id === 'changedOutside') await this.#keepAside(record.id, bytes, savedAt).catch(() => {});
      return { saved: false, problem: fault.problem };
    }
  }

  /** Gives the time of the save that holds the record: an earlier one where nothing has changed since. */
  async #replace(record: VehicleRecord, bytes: Uint8Array, savedAt: string): Promise<string> {
    const { files, folder: vehicles, patience = systemPatience, nowMs } = this.#parts;
    const { id } = record;
    const folder = this.#folderOf(id);
    const before = await this.#refuseStrange(id, folder);
    const newest = before === null ? null : unseal(before);
    // Saving what is saved already would push a real step back off the end of the generations.
    if (newest !== null && JSON.stringify(newest.record) === JSON.stringify(record)) return newest.savedAt;
    if (before === null) {
      await files.makeFolder(folder.path);
      await files.syncFolder(vehicles); // a new folder, too, must last
    } else {
      await keepGeneration(files, folder, before);
    }
    const beforeRename = async () => void (await this.#refuseStrange(id, folder));
    await atomicWrite(files, folder.record, bytes, { patience, beforeRename });
    this.#saw(id, { sha256: sha256Of(bytes), newer: false });
    await pruneGenerations(files, folder, nowMs());
    return savedAt;
  }

  /** The bytes that will be replaced, null for a new vehicle. Throws Refused where they are not those last seen. */
  async #refuseStrange(id: string, folder: VehicleFolder): Promise<Uint8Array | null> {
    const seen = this.#seen.get(id);
    if (seen?.newer === true) throw new Refused(madeByNewer());
    const newest = await readBytes(this.#parts.files, folder.record);
    if (newest !== null && newest.sha256 !== seen?.sha256) throw new Refused(changedOutside());
    return newest?.bytes ?? null;
  }

  /** Of saves refused one after the other the last holds all that the earlier ones held, so one is enough. */
  async #keepAside(id: string, bytes: Uint8Array, savedAt: string): Promise<void> {
    const place = await setAside(this.#parts.files, this.#folderOf(id), bytes, savedAt);
    const before = this.#asides.get(id);
    this.#asides.set(id, place);
    if (before !== undefined && before !== place) await this.#parts.files.remove(before);
  }

  async #remove(id: string): Promise<Outcome<readonly string[]>> {
    const removed = await removeVehicle(this.#parts.files, this.#parts.folder, this.#folderOf(id));
    if (removed.ok) this.#seen.delete(id);
    return removed;
  }

  async #restore(id: string, generation: string): Promise<LoadedVehicle> {
    const { files, patience = systemPatience, nowMs } = this.#parts;
    const folder = this.#folderOf(id);
    const content = await readEarlier(files, folder, generation);
    if (content === null) return { ok: false, problem: notThere(), earlier: await listEarlier(files, folder) };
    try {
      const newest = await readBytes(files, folder.record);
      if (newest !== null) await keepGeneration(files, folder, newest.bytes);
      await atomicWrite(files, folder.record, seal(new Date(nowMs()).toISOString(), content.record), { patience });
    } catch (fault) {
      return { ok: false, problem: writeProblem(fault, RECORD_PLACE), earlier: [] };
    }
    return this.#load(id);
  }

  #saw(id: string, seen: Seen): void {
    this.#seen.set(id, seen);
    this.#asides.delete(id);
  }
}
