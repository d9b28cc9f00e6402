// The axes of a pane as uPlot takes them: our own ticks and words, and a fine grid under the coarse one.

import type uPlot from 'uplot';
import { PANE_COLOURS, type PaneColour, type Theme } from '../style/traceColours.ts';
import type { StageTicks } from './stage.ts';

/** Ticks of the vertical axis, in the unit that is kept, with their words in the unit that is shown. */
export interface ValueTicks {
  readonly at: number[];
  readonly words: string[];
}

export interface SurfaceStyle {
  /** CSS px left of the paper. */
  readonly leftGutter: number;
  /** CSS px over and under the paper: half a label of the lowest and highest value. */
  readonly margin: number;
  /** A font without its size, as CSS has it. */
  readonly family: string;
  /** Grid of the time axis; the strip with the whole capture has none. */
  readonly timeGrid: boolean;
  readonly valueLabels: boolean;
}

/** What the axes look at whenever they are drawn. */
export interface AxesContent {
  theme(): Theme;
  ticks(): StageTicks;
  valueTicks(): ValueTicks;
}

const AXIS_PX = 13;
/** uPlot looks for a step among these before it asks for our own ticks; any number that it accepts will do. */
const NO_STEPS = [1e9];

export function paneAxes(style: SurfaceStyle, content: AxesContent): uPlot.Axis[] {
  const font = `${AXIS_PX}px ${style.family}`;
  const bare = { size: 0, gap: 0, ticks: { show: false }, border: { show: false }, incrs: NO_STEPS, font };
  const colour = (name: PaneColour) => (): string => PANE_COLOURS[name][content.theme()];
  const grid = (name: PaneColour) => ({ show: true, width: 1, stroke: colour(name) });
  const none = (): string[] => [];
  const values: uPlot.Axis = {
    ...bare,
    scale: 'y',
    side: 3,
    splits: () => content.valueTicks().at,
    values: style.valueLabels ? () => content.valueTicks().words : none,
    stroke: colour('axisInk'),
    gap: 8,
    grid: grid('grid'),
  };
  if (!style.timeGrid) return [{ ...bare, scale: 'x', show: false }, values];
  const across = { ...bare, scale: 'x', side: 2, values: none } as const;
  return [
    { ...across, splits: () => content.ticks().fine, grid: grid('gridFine') },
    { ...across, splits: () => content.ticks().ticks, grid: grid('grid') },
    values,
  ];
}
