// Where files lie on this computer: kept by the shell, for itself, and never part of a vehicle's record.

import { z } from 'zod';
import type { FileLayer } from '../store/fileLayer.ts';
import { type KeptFile, keptFile } from '../store/keptFile.ts';

const MOST_RECENT = 12;
const MOST_WHEREABOUTS = 2000;

const path = z.string().max(40_000);
const sha256 = z.string().regex(/^[0-9a-f]{64}$/);

const placesSchema = z.strictObject({
  /** Captures opened before, last opened first. */
  recent: z.array(z.strictObject({ path, sha256 })),
  /** Where a capture of this hash was last seen; the last entry is the latest. */
  whereabouts: z.array(z.strictObject({ path, sha256 })),
  lastVehicle: z.string().max(64).nullable(),
  /** Folder that a dialog opens at, by what it is for. */
  folders: z.strictObject({ captures: path.nullable(), exports: path.nullable() }),
});
export type Places = z.infer<typeof placesSchema>;

const NOWHERE: Places = {
  recent: [],
  whereabouts: [],
  lastVehicle: null,
  folders: { captures: null, exports: null },
};

export function placesFile(files: FileLayer, file: string): KeptFile<Places> {
  return keptFile(files, file, placesSchema, NOWHERE);
}

/** The capture is known to lie here, and was opened last. */
export function withCapture(places: Places, capture: { readonly path: string; readonly sha256: string }): Places {
  const others = (list: Places['recent']) => list.filter((known) => known.path !== capture.path);
  const elsewhere = others(places.whereabouts).filter((known) => known.sha256 !== capture.sha256);
  return {
    ...places,
    recent: [capture, ...others(places.recent)].slice(0, MOST_RECENT),
    whereabouts: [...elsewhere, capture].slice(-MOST_WHEREABOUTS),
  };
}

/** Forgets what was opened. Where the captures of records lie stays known: without it a vehicle would not open whole. */
export function withoutRecent(places: Places): Places {
  return { ...places, recent: [], lastVehicle: null };
}

/** Forgets a vehicle that was deleted, and where those captures lie that only it named. */
export function withoutVehicle(places: Places, id: string, sha256s: readonly string[]): Places {
  const others = (list: Places['recent']) => list.filter(({ sha256 }) => !sha256s.includes(sha256));
  return {
    ...places,
    recent: others(places.recent),
    whereabouts: others(places.whereabouts),
    lastVehicle: places.lastVehicle === id ? null : places.lastVehicle,
  };
}

/** Where a capture of this hash was last seen, or null. */
export function whereaboutsOf(places: Places, sha256: string): string | null {
  return places.whereabouts.find((known) => known.sha256 === sha256)?.path ?? null;
}
