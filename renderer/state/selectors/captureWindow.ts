import type { RecordWindow } from '../../../core/record/schema.ts';
import type { CaptureWindow } from '../../../core/windows/window.ts';

/** A window of the record as the core is asked about it: without its name and its place in the record. */
export function captureWindow({ startS, endS, bank, kind, origin }: RecordWindow): CaptureWindow {
  return { startS, endS, bank, kind, origin };
}
