import type { ShellBridge } from '../../core/bridge/shellMessages.ts';
import { type CaptureStore, createCaptureStore } from '../state/captureStore.ts';
import { createDialogStore, type DialogStore } from '../state/dialogStore.ts';
import { createNoticeStore, type NoticeStore } from '../state/noticeStore.ts';
import { createRecordStore, type RecordStore } from '../state/recordStore.ts';
import { createScoreStore, type ScoreStore } from '../state/scoreStore.ts';
import { createSettingsStore, type SettingsStore } from '../state/settingsStore.ts';
import { createShelfStore, type ShelfStore } from '../state/shelfStore.ts';
import { type ShownScores, shownScores } from '../state/shownScores.ts';
import { createWorkspaceStore, type WorkspaceStore } from '../state/workspaceStore.ts';
import type { CoreClient } from '../worker/coreClient.ts';
import type { Clock } from './clock.ts';
import { createSaver, type Saver } from './saver.ts';

/** What the window is made with: everything it reaches outside itself. */
export interface Surroundings {
  readonly shell: ShellBridge;
  readonly core: CoreClient;
  readonly clock: Clock;
  /** An id that no other entry of any record has. */
  newId(): string;
}

/** The whole window without its drawing: what the deeds in actions/ and the commands work on. */
export interface Program extends Surroundings {
  /** The vehicle's record: edited, undone, saved. */
  readonly record: RecordStore;
  /** What is only view: kept per vehicle, never undone. */
  readonly workspace: WorkspaceStore;
  /** Captures the core holds, and files being read. */
  readonly captures: CaptureStore;
  /** What the core said, as the screens may see it. */
  readonly score: ShownScores;
  /** All that the core said, for what works by itself and for what is signed; never to be shown. */
  readonly wholeScore: ScoreStore;
  readonly settings: SettingsStore;
  readonly dialogs: DialogStore;
  readonly notices: NoticeStore;
  readonly shelf: ShelfStore;
  readonly saver: Saver;
}

export function createProgram(surroundings: Surroundings): Program {
  const record = createRecordStore();
  const wholeScore = createScoreStore();
  const notices = createNoticeStore();
  return {
    ...surroundings,
    record,
    notices,
    saver: createSaver({ ...surroundings, record, notices }),
    workspace: createWorkspaceStore(),
    captures: createCaptureStore(),
    wholeScore,
    score: shownScores(wholeScore, record),
    settings: createSettingsStore(),
    dialogs: createDialogStore(),
    shelf: createShelfStore(),
  };
}
