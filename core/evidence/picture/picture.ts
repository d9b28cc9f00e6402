import type { Bank, Role } from '../../capture/roles.ts';
import type { TraceView } from '../../capture/traceView.ts';
import type { DecimalSign } from '../sheet.ts';

/** One trace of a pane. Its view is cut to the stretch of the picture already. */
export interface PictureTrace {
  /** For the legend: "Upstream oxygen sensor". */
  readonly words: string;
  readonly role: Role;
  readonly bank: Bank;
  readonly sensor: number | null;
  readonly view: TraceView;
}

/** A line where `low` equals `high`, else a band. */
export interface PictureGuide {
  readonly low: number;
  readonly high: number;
  /** "0.45 V switch point". */
  readonly words: string;
}

/** Traces over each other on one scale. */
export interface PicturePane {
  /** Quantity without its unit: "Oxygen sensors, bank 1". */
  readonly words: string;
  readonly unit: string;
  /** Lowest and highest value of the scale, low under high. */
  readonly scale: readonly [number, number];
  readonly traces: readonly PictureTrace[];
  readonly guides: readonly PictureGuide[];
}

export interface PictureWindow {
  readonly startS: number;
  readonly endS: number;
  /** On its tab: name, and finding in words where there is one. */
  readonly words: string;
}

export interface PictureNote {
  readonly startS: number;
  readonly words: string;
}

/** What the picture of stacked traces is made from. */
export interface TracePictureInput {
  readonly title: string;
  /** What stands under it: capture, short hash, day, "invented sample" where it is one. */
  readonly foot: string;
  readonly startS: number;
  readonly endS: number;
  readonly panes: readonly PicturePane[];
  readonly windows: readonly PictureWindow[];
  readonly notes: readonly PictureNote[];
  readonly decimalSign: DecimalSign;
  /** px of the whole picture; 480 by 320 at least. */
  readonly width: number;
  readonly height: number;
}
