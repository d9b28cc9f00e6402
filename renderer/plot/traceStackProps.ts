// What the stack of trace panes is given and what it says back. It keeps no state of its own beyond the pointer that is
// down: the visible stretch, the cursor, the windows and the layout belong to the workspace.

import type { CaptureOutline } from '../../core/bridge/coreMessages.ts';
import type { TraceView } from '../../core/capture/traceView.ts';
import type { Finding } from '../../core/findings/finding.ts';
import type { Stretch } from '../../core/windows/window.ts';

/** One pane: channels drawn over each other on one vertical scale. */
export interface PaneLayout {
  readonly id: string;
  readonly channelIds: readonly string[];
  /** Share of the height of all panes, 0 to 1. */
  readonly share: number;
  /** True where only its head is shown. */
  readonly folded?: boolean;
  /** Vertical scale: fixed for the quantity, fitted to the visible stretch on request, or typed by hand. */
  readonly scale:
    | { readonly kind: 'quantity' }
    | { readonly kind: 'auto' }
    | { readonly kind: 'hand'; readonly low: number; readonly high: number };
}

/** A window as the traces show it: a strip of tinted paper with a tab, or an outline for an offer of the core. */
export interface ShownWindow extends Stretch {
  readonly id: string;
  readonly name: string;
  /** Finding in words on the tab, with its sign; null while it is computed, and for offers. */
  readonly finding: Finding | null;
  readonly offer: boolean;
}

/** A note as the traces show it: a small flag on the edge. */
export interface ShownNote {
  readonly id: string;
  readonly startS: number;
  readonly endS: number | null;
  /** First words of its text. */
  readonly words: string;
}

/** An extra trace drawn over a channel's pane, dashed and named: a ghost of the model, or the second capture of a comparison. */
export interface GhostTrace {
  readonly id: string;
  readonly words: string;
  readonly overChannelId: string;
  readonly view: TraceView;
}

export type PointerTool = 'mark' | 'pan' | 'zoom' | 'note';

/** A drag of a window's edge or body. 'move' may come many times; 'abandon' puts everything back as it was at 'start'. */
export type WindowDrag =
  | { readonly phase: 'start' | 'end' | 'abandon'; readonly windowId: string }
  | { readonly phase: 'move'; readonly windowId: string; readonly stretch: Stretch };

/** How panes get what they draw. Must be the same object from render to render. */
export interface TraceSource {
  views(channelIds: readonly string[], stretch: Stretch, buckets: number): Promise<readonly TraceView[]>;
  valuesAt(
    channelIds: readonly string[],
    timeS: number,
  ): Promise<readonly { channelId: string; sampleS: number | null; value: number | null }[]>;
  nextStop(channelId: string, fromS: number, direction: 1 | -1, stop: 'sample' | 'switch'): Promise<number | null>;
  describe(channelIds: readonly string[], stretch: Stretch): Promise<readonly string[]>;
}

/** Units a person reads by; what is stored and computed stays in the role's unit. */
export interface DisplayUnits {
  readonly temperature: 'C' | 'F' | 'K';
  readonly speed: 'km/h' | 'mph';
}

export interface TraceStackProps {
  readonly capture: CaptureOutline;
  readonly source: TraceSource;
  readonly panes: readonly PaneLayout[];
  readonly visible: Stretch;
  readonly windows: readonly ShownWindow[];
  readonly notes: readonly ShownNote[];
  readonly ghosts: readonly GhostTrace[];
  readonly selectedWindowId: string | null;
  readonly cursorS: number | null;
  /** A second cursor, for differences; null where there is none. */
  readonly secondCursorS: number | null;
  readonly tool: PointerTool;
  readonly guides: boolean;
  readonly wheel: 'zoom' | 'pan';
  readonly theme: 'light' | 'dark';
  /** Absent: degrees Celsius and km/h. */
  readonly units?: DisplayUnits;
  /** `step` false while a gesture is under way, true when it ends: only then the view joins the back list. */
  onVisible(stretch: Stretch, step: boolean): void;
  onCursor(timeS: number | null): void;
  onSecondCursor(timeS: number | null): void;
  onMark(stretch: Stretch): void;
  onSelectWindow(id: string): void;
  onAcceptOffer(id: string): void;
  onWindowDrag(drag: WindowDrag): void;
  onNoteAt(startS: number, endS: number | null): void;
  onSelectNote(id: string): void;
  onPaneShares(shares: Readonly<Record<string, number>>): void;
  /** Fold and scale of a pane are chosen in its own small menu. */
  onPaneChange(pane: PaneLayout): void;
  /** A new order of the panes, by id, from the same menu. Absent: the menu does not offer it. */
  onPaneOrder?(ids: readonly string[]): void;
  /**
   * Commands that the panes offer by a button: "view.whole", "view.channels". Keys that are commands are left to the
   * program's key map, which knows whether the person wants single letters to act.
   */
  onCommand(id: string): void;
}
