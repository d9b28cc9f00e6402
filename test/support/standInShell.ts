// A shell without Electron: files, vehicles, settings and events in the page's own memory, so that the window runs in an
// ordinary browser. Everything it is asked is written down in `said`, for tests. What is kept survives a reload of the
// page, as a restart would.

import { DEFAULT_SETTINGS } from '../../core/bridge/defaultSettings.ts';
import type { Picked, Settings, ShellBridge, ShellEventName, VehicleEntry } from '../../core/bridge/shellMessages.ts';
import { looksLikeBundle } from '../../core/evidence/bundle/looksLikeBundle.ts';
import type { HeaderChoice } from '../../core/record/headerChoice.ts';
import type { VehicleRecord } from '../../core/record/schema.ts';
import { sha256Of, standInBundles } from './standInBundles.ts';

/** A file of the stand-in: its bytes come when they are wanted. */
export interface StandInFile {
  readonly picked: Picked;
  readonly words: string;
  bytes(): Promise<Uint8Array>;
}

interface Kept {
  settings: Settings;
  lastVehicle: string | null;
  vehicles: Record<string, { record: VehicleRecord; view: Record<string, never>; savedAt: string }>;
  recent: { token: string; sha256: string }[];
  choices: Record<string, HeaderChoice>;
}

/** What was written out, where the real shell would have asked for a place. */
export interface Exported {
  readonly name: string;
  readonly kind: string;
  readonly content: string | Uint8Array;
}

export interface StandIn {
  readonly shell: ShellBridge;
  readonly exported: Exported[];
  readonly titles: string[];
  /** Files the next `pickCaptures` gives. */
  toPick: Picked[];
  fire(event: ShellEventName, payload: unknown): void;
  addFile(file: StandInFile): void;
  fileOf(token: string): StandInFile | null;
  /** Hands the window what it wrote last, as a bundle of this name. */
  openWritten(name: string): void;
}

/** Where the stand-in keeps what a restart must find again. */
export interface StandInMemory {
  load(): string | null;
  keep(text: string): void;
}

export function createStandIn(samples: readonly StandInFile[], memory: StandInMemory): StandIn {
  const files = new Map(samples.map((file) => [file.picked.token, file]));
  const kept = load(memory);
  const hearers = new Map<string, Set<(payload: never) => void>>();
  const standIn: StandIn = {
    shell: undefined as never,
    exported: [],
    titles: [],
    toPick: [],
    fire: (event, payload) => {
      for (const hear of hearers.get(event) ?? []) hear(payload as never);
    },
    addFile: (file) => void files.set(file.picked.token, file),
    fileOf: (token) => files.get(token) ?? null,
    openWritten: (name) => {
      const content = standIn.exported.at(-1)?.content;
      if (!(content instanceof Uint8Array)) throw new Error('No bundle was written.');
      const picked = { token: `written-${name}`, name, bytes: content.length, sample: false, bundle: true as const };
      standIn.addFile({ picked, words: '', bytes: async () => content });
      standIn.fire('openCaptures', [picked]);
    },
  };
  const keep = (): void => memory.keep(JSON.stringify(kept));
  const bySha = (sha256: string): Picked | null => {
    const found = kept.recent.find((one) => one.sha256 === sha256);
    return found === undefined ? null : (files.get(found.token)?.picked ?? null);
  };
  const written = (kind: string, name: string, content: string | Uint8Array) => {
    standIn.exported.push({ name, kind, content });
    return { name, problem: null };
  };
  const save = (record: VehicleRecord): string => {
    const savedAt = new Date().toISOString();
    kept.vehicles[record.id] = { record, view: kept.vehicles[record.id]?.view ?? {}, savedAt };
    kept.lastVehicle = record.id;
    keep();
    return savedAt;
  };
  const bundles = standInBundles({
    file: async (token) => {
      const file = files.get(token);
      return file === undefined ? null : { name: file.picked.name, bytes: await file.bytes() };
    },
    capture: async (sha256) => {
      for (const file of files.values()) {
        const bytes = await file.bytes();
        if ((await sha256Of(bytes)) === sha256) return bytes;
      }
      return null;
    },
    known: (vehicleId) => kept.vehicles[vehicleId]?.record ?? null,
    keep: (record) => void save(record),
    keepCapture: (name, sha256, bytes) => {
      const picked = { token: `kept-${sha256}`, name, bytes: bytes.length, sample: false };
      standIn.addFile({ picked, words: '', bytes: async () => bytes });
      kept.recent = [...kept.recent, { token: picked.token, sha256 }];
    },
    written,
  });
  const loaded = (id: string) => {
    const found = kept.vehicles[id];
    if (found === undefined) return { ok: false as const, problem: noVehicle, earlier: [] };
    kept.lastVehicle = id;
    keep();
    return { ok: true as const, record: found.record, view: found.view, readOnly: false, notice: null };
  };

  const shell: ShellBridge = {
    ...bundles,
    platform: 'linux',
    isolation: 'stand-in',
    on: (event, hear) => {
      const set = hearers.get(event) ?? new Set();
      hearers.set(event, set.add(hear as never));
      return () => void set.delete(hear as never);
    },
    takeFiles: async (dropped) =>
      Promise.all(
        dropped.map(async (one) => {
          if (!(one instanceof File)) return { ok: false as const, problem: noFile };
          const bytes = new Uint8Array(await one.arrayBuffer());
          const picked = {
            token: `dropped-${one.name}-${bytes.length}`,
            name: one.name,
            bytes: one.size,
            sample: false,
            ...(looksLikeBundle(one.name, bytes) ? { bundle: true as const } : {}),
          };
          standIn.addFile({ picked, words: '', bytes: async () => bytes });
          return { ok: true as const, picked };
        }),
      ),
    pickCaptures: async () => standIn.toPick.splice(0),
    sampleDrives: async () => samples.map(({ picked, words }) => ({ ...picked, words })),
    findCapture: async ({ sha256 }) => bySha(sha256),
    locateCapture: async ({ sha256 }) => standIn.toPick.splice(0)[0] ?? bySha(sha256),
    rememberCapture: async (one) => {
      kept.recent = [one, ...kept.recent.filter(({ sha256 }) => sha256 !== one.sha256)];
      keep();
      return null;
    },
    listVehicles: async () =>
      Object.values(kept.vehicles)
        .map(({ record, savedAt }): VehicleEntry => entryOf(record, savedAt))
        .sort((a, b) => b.savedAt.localeCompare(a.savedAt)),
    loadVehicle: async ({ id }) => loaded(id),
    earlierSaves: async () => [],
    restoreVehicle: async ({ id }) => loaded(id),
    saveVehicle: async ({ record }) => ({ saved: true, savedAt: save(record) }),
    deleteVehicle: async ({ id }) => {
      const { [id]: _gone, ...others } = kept.vehicles;
      kept.vehicles = others;
      if (kept.lastVehicle === id) kept.lastVehicle = null;
      keep();
      return { problem: null };
    },
    saveView: async ({ id, view }) => {
      const found = kept.vehicles[id];
      if (found !== undefined) found.view = JSON.parse(JSON.stringify(view));
      keep();
      return null;
    },
    recent: async () => ({
      captures: kept.recent.flatMap(({ token, sha256 }) => {
        const picked = files.get(token)?.picked;
        return picked === undefined ? [] : [{ ...picked, sha256, there: true }];
      }),
      lastVehicle: kept.lastVehicle,
    }),
    clearRecent: async () => {
      kept.recent = [];
      keep();
      return null;
    },
    settings: async () => kept.settings,
    saveSettings: async (settings) => {
      kept.settings = settings;
      keep();
      return null;
    },
    columnChoice: async ({ headerKey }) => kept.choices[headerKey] ?? null,
    rememberColumnChoice: async (choice) => {
      kept.choices[choice.headerKey] = choice;
      keep();
      return null;
    },
    exportFile: async ({ suggestedName, kind, content }) => written(kind, suggestedName, content),
    exportPdf: async ({ suggestedName, html }) => written('pdf', suggestedName, html),
    printSheet: async ({ html }) => {
      written('print', 'print', html);
      return { problem: null };
    },
    showExport: async () => null,
    copyText: async ({ text }) => {
      written('text', 'clipboard', text);
      return null;
    },
    copyPicture: async ({ png }) => {
      written('png', 'clipboard', png);
      return null;
    },
    setTitle: async ({ title, unsaved }) => {
      standIn.titles.push(`${unsaved ? '• ' : ''}${title}`);
      return null;
    },
    toggleFullScreen: async () => null,
    setCommandStates: async () => null,
    about: async () => ({
      version: '0.0.0-stand-in',
      runtime: 'an ordinary browser',
      fallbackRuntime: false,
      licences: [],
    }),
    readyToClose: async () => null,
    settled: async () => null,
  };
  return Object.assign(standIn, { shell });
}

function entryOf(record: VehicleRecord, savedAt: string): VehicleEntry {
  const captures = Object.values(record.captures);
  return {
    id: record.id,
    name: record.identity.name,
    archived: record.archived,
    savedAt,
    captures: captures.length,
    sample: captures.length > 0 && captures.every(({ sample }) => sample),
  };
}

function load(memory: StandInMemory): Kept {
  const text = memory.load();
  if (text !== null) return JSON.parse(text);
  return { settings: DEFAULT_SETTINGS, lastVehicle: null, vehicles: {}, recent: [], choices: {} };
}

const noVehicle = {
  id: 'noVehicle',
  what: 'This vehicle is no longer kept.',
  where: 'The list of vehicles',
  doNext: 'Choose another one.',
};

const noFile = {
  id: 'noFile',
  what: 'This is no file.',
  where: 'What was dropped',
  doNext: 'Drop a capture as an instrument wrote it.',
};
