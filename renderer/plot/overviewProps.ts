// What the strip with the whole capture is given and what it says back.

import type { CaptureOutline } from '../../core/bridge/coreMessages.ts';
import type { Stretch } from '../../core/windows/window.ts';
import type { ShownNote, ShownWindow, TraceSource } from './traceStackProps.ts';

export interface OverviewProps {
  readonly capture: CaptureOutline;
  /** Must be the same object from render to render. */
  readonly source: TraceSource;
  /** Channels drawn in the strip, each over the strip's whole height; two or three say enough. */
  readonly channelIds: readonly string[];
  readonly visible: Stretch;
  readonly windows: readonly ShownWindow[];
  readonly notes: readonly ShownNote[];
  readonly selectedWindowId: string | null;
  readonly cursorS: number | null;
  readonly theme: 'light' | 'dark';
  /** `step` false while a gesture is under way, true when it ends. */
  onVisible(stretch: Stretch, step: boolean): void;
  onSelectWindow(id: string): void;
  onSelectNote(id: string): void;
}
