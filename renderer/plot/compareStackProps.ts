// What the panes of a comparison are given and what they say back: two windows, of two captures or of one, on one time
// axis that counts from the start of each.

import type { CaptureOutline } from '../../core/bridge/coreMessages.ts';
import type { Stretch } from '../../core/windows/window.ts';
import type { DisplayUnits, PaneLayout, TraceSource } from './traceStackProps.ts';

/** One side of a comparison. */
export interface ComparedSide {
  readonly capture: CaptureOutline;
  /** Must be the same object from render to render. */
  readonly source: TraceSource;
  readonly window: Stretch;
  /** Beside every trace of this side: "Before", "After", "Twin". Never empty, and different for the two sides. */
  readonly label: string;
}

/** One pane of a comparison: the same quantity of both sides on one vertical scale. */
export interface ComparedPane {
  readonly id: string;
  readonly firstChannelIds: readonly string[];
  readonly secondChannelIds: readonly string[];
  /** Share of the height of all panes, 0 to 1. */
  readonly share: number;
  readonly scale: PaneLayout['scale'];
}

export interface CompareStackProps {
  readonly first: ComparedSide;
  readonly second: ComparedSide;
  readonly panes: readonly ComparedPane[];
  /** The second side is drawn this many seconds later than its window's start says; 0 puts both starts together. */
  readonly offsetS: number;
  /** Stretch on the common axis; second 0 is the start of the first side's window. */
  readonly visible: Stretch;
  /** Cursor on the common axis. */
  readonly cursorS: number | null;
  readonly guides: boolean;
  readonly wheel: 'zoom' | 'pan';
  readonly theme: 'light' | 'dark';
  /** Absent: degrees Celsius and km/h. */
  readonly units?: DisplayUnits;
  onOffset(offsetS: number, step: boolean): void;
  /** `step` false while a gesture is under way, true when it ends. */
  onVisible(stretch: Stretch, step: boolean): void;
  onCursor(timeS: number | null): void;
}
