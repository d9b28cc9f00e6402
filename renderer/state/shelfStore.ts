import { createStore, type StoreApi } from 'zustand/vanilla';
import type { EarlierSave, Picked, RecentCapture, VehicleEntry } from '../../core/bridge/shellMessages.ts';
import type { Problem } from '../../core/reading/problem.ts';

export interface SampleDrive extends Picked {
  /** What the drive shows, a sentence. */
  readonly words: string;
}

/** A vehicle whose newest save cannot be read, with the saves behind it to choose from. */
export interface DamagedVehicle {
  readonly id: string;
  readonly problem: Problem;
  readonly earlier: readonly EarlierSave[];
}

/** What can be opened: kept vehicles, recent captures, the sample drives that come with the program. */
export interface ShelfState {
  readonly vehicles: readonly VehicleEntry[];
  readonly recent: readonly RecentCapture[];
  readonly samples: readonly SampleDrive[];
  /** False until the shell has answered and the first document, if any, is open. */
  readonly begun: boolean;
  readonly damaged: DamagedVehicle | null;
}

export type ShelfStore = StoreApi<ShelfState>;

export function createShelfStore(): ShelfStore {
  return createStore<ShelfState>()(() => ({ vehicles: [], recent: [], samples: [], begun: false, damaged: null }));
}
