import { createStore, type StoreApi } from 'zustand/vanilla';
import type { ReceivedBundle } from '../../core/bridge/shellMessages.ts';
import type { SignDraft } from './signDraft.ts';

/** What can lie over the workspace, one at a time. */
export type DialogState =
  | { readonly kind: 'vehicleDetails'; readonly part?: 'identity' | 'name' | 'codes' | 'exhaust' | 'papers' }
  | { readonly kind: 'vehicles' }
  | { readonly kind: 'deleteVehicle' }
  | { readonly kind: 'samples' }
  | { readonly kind: 'columns'; readonly captureId: string }
  | { readonly kind: 'channels' }
  | { readonly kind: 'reading'; readonly readingId: string | null }
  | {
      readonly kind: 'note';
      readonly noteId: string | null;
      readonly captureId: string | null;
      readonly startS: number | null;
      readonly endS: number | null;
    }
  | { readonly kind: 'windowTimes'; readonly windowId: string }
  | { readonly kind: 'sign'; readonly answers: string | null }
  | { readonly kind: 'opinions'; readonly opinionId: string | null }
  | { readonly kind: 'withdraw'; readonly opinionId: string }
  | { readonly kind: 'compare' }
  | { readonly kind: 'sheet' }
  | { readonly kind: 'bundle' }
  /** Bundles that were opened, looked at one after another. */
  | { readonly kind: 'received'; readonly bundles: readonly [ReceivedBundle, ...ReceivedBundle[]] }
  | { readonly kind: 'picture' }
  | { readonly kind: 'notesTable' }
  | { readonly kind: 'settings' }
  | { readonly kind: 'find' }
  | { readonly kind: 'keys' }
  | { readonly kind: 'measures'; readonly measureId?: string }
  | { readonly kind: 'cautions' }
  | { readonly kind: 'about' };

export interface DialogStoreState {
  readonly dialog: DialogState | null;
  /** An opinion that was begun and not signed yet: closing its dialog loses nothing. */
  readonly signDraft: SignDraft | null;
  show(dialog: DialogState): void;
  close(): void;
  keepDraft(draft: SignDraft | null): void;
}

export type DialogStore = StoreApi<DialogStoreState>;

export function createDialogStore(): DialogStore {
  return createStore<DialogStoreState>()((set) => ({
    dialog: null,
    signDraft: null,
    show: (dialog) => set({ dialog }),
    close: () => set({ dialog: null }),
    keepDraft: (signDraft) => set({ signDraft }),
  }));
}
