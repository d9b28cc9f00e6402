import type { RecordWindow } from '../../../core/record/schema.ts';
import type { Program } from '../../program/program.ts';
import type { HeldCapture } from '../captureStore.ts';
import { recordOf } from '../recordStore.ts';
import type { CaptureView } from '../viewState.ts';

type Stores = Pick<Program, 'workspace' | 'captures' | 'record'>;

/** The capture whose traces are shown, while the core holds it. */
export function shownCapture({ workspace, captures }: Stores): HeldCapture | null {
  const { captureId } = workspace.getState();
  return captureId === null ? null : (captures.getState().held[captureId] ?? null);
}

/** How the shown capture is looked at. */
export function shownView({ workspace }: Stores): CaptureView | null {
  const { captureId, captures } = workspace.getState();
  return captureId === null ? null : (captures[captureId] ?? null);
}

/** The window whose finding is shown, where the record still has it. */
export function chosenWindow({ workspace, record }: Stores): RecordWindow | null {
  const { windowId } = workspace.getState();
  return windowId === null ? null : (recordOf(record.getState())?.windows[windowId] ?? null);
}
