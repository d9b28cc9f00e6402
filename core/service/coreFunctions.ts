import type { Capture } from '../capture/capture.ts';
import type { Channel } from '../capture/channel.ts';
import type { TraceView } from '../capture/traceView.ts';
import type { ComparedWindow } from '../compare/compareWindows.ts';
import type { Comparison } from '../compare/comparison.ts';
import type { WindowScore } from '../findings/finding.ts';
import type { VehicleEvidence } from '../findings/vehicleEvidence.ts';
import type { VehicleScore } from '../findings/vehicleScore.ts';
import type { ModelTrace } from '../model/modelTrace.ts';
import type { Outcome } from '../reading/problem.ts';
import type { ByteSource, ReadCapture, ReadOptions } from '../reading/readCapture.ts';
import type { Seconds } from '../units/quantities.ts';
import type { CaptureWindow } from '../windows/window.ts';

/** Draws one channel over any stretch; keeps what makes that quick. */
export type Drawer = (startS: Seconds, endS: Seconds, buckets: number) => TraceView;

/** The functions of core that open and draw a capture. Tests give the service others. */
export interface QuickCore {
  readCapture(source: ByteSource, options: ReadOptions): Promise<Outcome<ReadCapture>>;
  drawerOf(channel: Channel): Drawer;
}

/** The functions of core that may take longer than a frame. */
export interface SlowCore {
  suggestWindows(capture: Capture): readonly CaptureWindow[];
  scoreWindow(capture: Capture, window: CaptureWindow, troubleCodes: readonly string[]): WindowScore;
  judgeVehicle(evidence: VehicleEvidence): VehicleScore;
  modelTraces(capture: Capture, window: CaptureWindow): readonly ModelTrace[];
  compareWindows(first: ComparedWindow, second: ComparedWindow): Comparison;
}
