// The colours of everything that is drawn in the panes, one table, light and dark. A role has one colour everywhere:
// panes, strip, comparison, sheets. test/unit/renderer/plot/traceColours.test.ts computes every contrast.
// Hues are from published colour-blind-safe sets: Okabe and Ito 2008 (front and rear sensor), Paul Tol's bright, muted
// and high-contrast schemes (the rest). Front and rear also differ in weight, banks in dash, so that hue is never alone.

import type { Role } from '../../core/capture/roles.ts';

export type Theme = 'light' | 'dark';
export type Tone = Readonly<Record<Theme, string>>;

/** Front and rear sensor keep a distance of 86.9 (CIELAB 1976) or more for every kind of colour vision. */
export const TRACE_COLOURS: Readonly<Record<Role, Tone>> = {
  upstreamO2: { light: '#0072b2', dark: '#56b4e9' },
  upstreamLambda: { light: '#0072b2', dark: '#56b4e9' },
  downstreamO2: { light: '#d55e00', dark: '#e69f00' },
  rpm: { light: '#117733', dark: '#44aa99' },
  coolant: { light: '#882255', dark: '#cc79a7' },
  stft: { light: '#332288', dark: '#88ccee' },
  ltft: { light: '#aa3377', dark: '#cc79a7' },
  maf: { light: '#228833', dark: '#999933' },
  load: { light: '#aa4499', dark: '#ddcc77' },
  speed: { light: '#332288', dark: '#88ccee' },
  throttle: { light: '#882255', dark: '#cc79a7' },
  fuelStatus: { light: '#514e46', dark: '#bbbbbb' },
  catalystTemp: { light: '#aa4499', dark: '#ee6677' },
  intakeAir: { light: '#4477aa', dark: '#66ccee' },
  other: { light: '#514e46', dark: '#bbbbbb' },
};

/** What lies under and beside the traces. `paper` is --paper of tokens.css; the canvas itself is transparent. */
export const PANE_COLOURS = {
  paper: { light: '#fcfbf7', dark: '#141618' },
  /** A window's strip of tinted paper, and the strip of the selected window. */
  tint: { light: '#f8f3e6', dark: '#1e2629' },
  tintSelected: { light: '#f4ebd4', dark: '#253135' },
  /** A stretch that is being marked. */
  tintMarking: { light: '#e4efec', dark: '#1f3234' },
  /**
   * Grid: carries no meaning beyond its labels, so it may be as faint as recorder paper has it;
   * laid over paper and tint alike. */
  grid: { light: '#1c1b1720', dark: '#efece21c' },
  gridFine: { light: '#1c1b170f', dark: '#efece20c' },
  axisInk: { light: '#514e46', dark: '#bab6aa' },
  /** Guide lines: fainter than any trace, and still 3 : 1 over every ground. */
  guide: { light: '#858175', dark: '#85898d' },
  /** Between the two lines of a guide band. */
  guideBand: { light: '#1c1b170a', dark: '#efece20d' },
  /** Traces of the model. */
  ghost: { light: '#6b675d', dark: '#a5a196' },
  edge: { light: '#7a766b', dark: '#8f9397' },
  edgeSelected: { light: '#0b5560', dark: '#86d3cb' },
  cursor: { light: '#1c1b17', dark: '#efece2' },
} as const satisfies Readonly<Record<string, Tone>>;

export type PaneColour = keyof typeof PANE_COLOURS;

/** Weight of a trace, CSS px: the rear sensor is the heavier one, so that the two differ in grey print too. */
export function traceWidth(role: Role): number {
  return role === 'downstreamO2' ? 2.25 : 1.5;
}

/** How a trace is broken: bank 2, a sensor behind a second brick and the second side of a comparison each differ. */
export function traceDash(place: {
  readonly bank: 1 | 2 | null;
  readonly sensor: number | null;
  readonly second?: boolean;
}): readonly number[] {
  const behindSecondBrick = place.sensor !== null && place.sensor >= 3;
  if (place.second === true) return place.bank === 2 ? [5, 3, 1.5, 3] : [4, 2.5];
  if (behindSecondBrick) return [10, 3, 2, 3];
  return place.bank === 2 ? [9, 4] : [];
}
