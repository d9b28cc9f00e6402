import type { CaptureWindow } from '../../../core/windows/window.ts';
import type { Program } from '../../program/program.ts';
import type { HeldCapture } from '../captureStore.ts';
import { captureWindow } from './captureWindow.ts';
import { chosenWindow, shownCapture } from './shown.ts';

/** A stretch of the shown capture whose finding is shown. */
export interface JudgedStretch {
  readonly held: HeldCapture;
  readonly window: CaptureWindow;
}

/** The window or offer that is looked at, where it lies in the shown capture. */
export function judgedStretch(program: Pick<Program, 'workspace' | 'captures' | 'record'>): JudgedStretch | null {
  const held = shownCapture(program);
  if (held === null) return null;
  const { selected } = program.workspace.getState();
  if (selected?.kind === 'offer') {
    const [captureId = '', index = ''] = selected.id.split('/');
    const window = captureId === held.captureId ? held.offers[Number(index)] : undefined;
    return window === undefined ? null : { held, window };
  }
  const window = chosenWindow(program);
  return window === null || window.captureId !== held.captureId ? null : { held, window: captureWindow(window) };
}
