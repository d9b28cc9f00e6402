// The vehicles on disk: one sealed JSON document each, replaced whole, with its earlier saves behind it.

import type { z } from 'zod';
import {
  type EarlierSave,
  type loadedVehicleSchema,
  type savedSchema,
  type VehicleEntry,
  viewStateSchema,
} from '../../core/bridge/shellMessages.ts';
import type { Problem } from '../../core/reading/problem.ts';
import type { VehicleRecord } from '../../core/record/schema.ts';
import { atomicWrite, type Patience, systemPatience } from './atomicWrite.ts';
import { keepGeneration, listEarlier, pruneGenerations, readEarlier, setAside } from './earlierSaves.ts';
import type { FileLayer } from './fileLayer.ts';
import { writeProblem } from './fileProblem.ts';
import { keptFile } from './keptFile.ts';
import { listEntries } from './listEntries.ts';
import { changedOutside, damaged, madeByNewer, missing, notThere, unreadable } from './recordProblems.ts';
import { seal, sha256Of } from './sealedRecord.ts';
import { sweepTemporary } from './sweepTemporary.ts';
import { FOLDER_NAME, folderNamed, openSave, readBytes, type VehicleFolder, vehicleFolder } from './vehicleFolder.ts';

type LoadedVehicle = z.infer<typeof loadedVehicleSchema>;
type Saved = z.infer<typeof savedSchema>;
type ViewState = z.infer<typeof viewStateSchema>;

export interface VehicleStore {
  /** Makes the folder and clears what a killed program left. Call once, before anything else. */
  start(): Promise<void>;
  list(): Promise<VehicleEntry[]>;
  load(id: string): Promise<LoadedVehicle>;
  /** Resolves with saved true only when the record would survive a power cut. Never rejects. */
  save(record: VehicleRecord): Promise<Saved>;
  saveView(id: string, view: ViewState): Promise<void>;
  earlier(id: string): Promise<EarlierSave[]>;
  restore(id: string, generation: string): Promise<LoadedVehicle>;
  /** Resolves when nothing is being written. */
  settle(): Promise<void>;
}

export interface VehicleStoreParts {
  /** The folder that holds a folder for each vehicle. */
  readonly folder: string;
  readonly files: FileLayer;
  nowMs(): number;
  readonly patience?: Patience;
}

/** What the store last saw of a record on disk: replacing anything else would lose somebody's work. */
interface Seen {
  readonly sha256: string | null;
  readonly newerVersion: number | null;
}

export function createVehicleStore(parts: VehicleStoreParts): VehicleStore {
  const { folder: vehicles, files, nowMs, patience = systemPatience } = parts;
  const seen = new Map<string, Seen>();
  const asides = new Map<string, string>();
  const turns = new Map<string, Promise<unknown>>();

  /** One thing at a time for each vehicle. */
  const inTurn = <R>(id: string, job: () => Promise<R>): Promise<R> => {
    const before = turns.get(id) ?? Promise.resolve();
    const turn = before.then(job, job);
    turns.set(id, turn);
    return turn;
  };

  const viewFile = (folder: VehicleFolder) => keptFile<ViewState>(files, folder.view, viewStateSchema, {});

  const load = async (id: string): Promise<LoadedVehicle> => {
    const folder = vehicleFolder(vehicles, id);
    const newest = await readBytes(files, folder.record);
    const save = newest === null ? null : openSave(newest.bytes);
    const problem =
      newest === null ? missing() : save === null ? damaged() : save.opened.ok ? null : save.opened.problem;
    if (save === null || !save.opened.ok || problem !== null) {
      return { ok: false, problem: problem ?? damaged(), earlier: await listEarlier(files, folder) };
    }
    const { record, newerVersion } = save.opened;
    seen.set(id, { sha256: newest?.sha256 ?? null, newerVersion });
    return {
      ok: true,
      record,
      view: await viewFile(folder).read(),
      readOnly: newerVersion !== null,
      notice: newerVersion === null ? null : madeByNewer(newerVersion),
    };
  };

  /** Throws Refused where the record on disk is not the one the store last saw. */
  const refuseStrange = async (id: string, folder: VehicleFolder): Promise<Uint8Array | null> => {
    const known = seen.get(id);
    if (known?.newerVersion != null) throw new Refused(madeByNewer(known.newerVersion));
    const newest = await readBytes(files, folder.record);
    if (newest !== null && newest.sha256 !== known?.sha256) throw new Refused(changedOutside());
    return newest?.bytes ?? null;
  };

  const write = async (id: string, bytes: Uint8Array): Promise<void> => {
    const folder = vehicleFolder(vehicles, id);
    const before = await refuseStrange(id, folder);
    if (before === null) {
      await files.makeFolder(folder.path);
      await files.syncFolder(vehicles); // a new folder, too, must last
    } else {
      await keepGeneration(files, folder, before);
    }
    const beforeRename = async () => void (await refuseStrange(id, folder));
    await atomicWrite(files, folder.record, bytes, { patience, beforeRename });
    seen.set(id, { sha256: sha256Of(bytes), newerVersion: null });
    await pruneGenerations(files, folder, nowMs());
  };

  /** The later save of a run holds all that the earlier one held, so one is enough. */
  const keepAside = async (id: string, bytes: Uint8Array, savedAt: string): Promise<void> => {
    const place = await setAside(files, vehicleFolder(vehicles, id), bytes, savedAt);
    const before = asides.get(id);
    asides.set(id, place);
    if (before !== undefined && before !== place) await files.remove(before);
  };

  const save = async (record: VehicleRecord): Promise<Saved> => {
    const savedAt = new Date(nowMs()).toISOString();
    const bytes = seal(savedAt, record);
    try {
      await write(record.id, bytes);
      return { saved: true, savedAt };
    } catch (fault) {
      if (!(fault instanceof Refused)) {
        return { saved: false, problem: writeProblem(fault, `the record of ${record.identity.name}`) };
      }
      if (fault.problem.id === 'changedOutside') {
        // Both are kept. Where even this fails, the window still holds the change and shows that it is not saved.
        await keepAside(record.id, bytes, savedAt).catch(() => {});
      }
      return { saved: false, problem: fault.problem };
    }
  };

  const restore = async (id: string, generation: string): Promise<LoadedVehicle> => {
    const folder = vehicleFolder(vehicles, id);
    const content = await readEarlier(files, folder, generation);
    if (content === null) return { ok: false, problem: notThere(), earlier: await listEarlier(files, folder) };
    const newest = await readBytes(files, folder.record);
    if (newest !== null) await keepGeneration(files, folder, newest.bytes);
    try {
      await atomicWrite(files, folder.record, seal(new Date(nowMs()).toISOString(), content.record), { patience });
    } catch (fault) {
      return { ok: false, problem: writeProblem(fault, 'the vehicle’s record'), earlier: [] };
    }
    return load(id);
  };

  return {
    async start() {
      await files.makeFolder(vehicles);
      await sweepTemporary(files, vehicles, nowMs());
      for (const name of await files.list(vehicles)) {
        if (!FOLDER_NAME.test(name)) continue;
        const { path, generations, setAside: aside } = folderNamed(vehicles, name);
        for (const place of [path, generations, aside]) await sweepTemporary(files, place, nowMs());
      }
    },
    list: () => listEntries(files, vehicles),
    load: (id) => inTurn(id, () => load(id).catch(() => ({ ok: false, problem: unreadable(), earlier: [] }))),
    save: (record) => inTurn(record.id, () => save(record)),
    saveView: (id, view) => inTurn(id, () => viewFile(vehicleFolder(vehicles, id)).write(view)),
    earlier: (id) => inTurn(id, () => listEarlier(files, vehicleFolder(vehicles, id))),
    restore: (id, generation) => inTurn(id, () => restore(id, generation)),
    async settle() {
      await Promise.allSettled(turns.values());
    },
  };
}

/** Why a save was not tried. */
class Refused extends Error {
  readonly problem: Problem;
  constructor(problem: Problem) {
    super(problem.what);
    this.problem = problem;
  }
}
