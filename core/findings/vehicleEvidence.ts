import type { Capture } from '../capture/capture.ts';
import type { Brick, CaptureRef, Reading, RecordWindow } from '../record/schema.ts';
import type { DecisionCosts } from './costs.ts';
import type { JudgedWindow } from './judgeWindow.ts';

/** What a vehicle is judged from: its open captures with the record's windows in them, readings and codes. */
export interface VehicleEvidence {
  readonly captures: readonly {
    readonly capture: Capture;
    readonly captureId: string;
    readonly kind: CaptureRef['kind'];
    readonly windows: readonly RecordWindow[];
  }[];
  readonly readings: readonly Reading[];
  /** Upper case. */
  readonly troubleCodes: readonly string[];
  readonly rearSensor: 'yes' | 'no' | 'unknown';
  /** What decisions cost; usual proportions where left out or 0. */
  readonly costs?: DecisionCosts;
  /** How the exhaust is laid out. */
  readonly bricks?: readonly Brick[];
}

/** A window of the record, judged. */
export interface KeptWindow {
  readonly windowId: string;
  readonly captureId: string;
  readonly kind: CaptureRef['kind'];
  readonly judged: JudgedWindow;
}
