// The time axis under all panes: labels and tick marks, drawn by uPlot on a strip of its own, so that every pane above
// has the same height rules.

import uPlot from 'uplot';
import type { Stretch } from '../../core/windows/window.ts';
import { PANE_COLOURS, type Theme } from '../style/traceColours.ts';
import { LEFT_GUTTER, RIGHT_GUTTER, type StageDrawing, type StageTicks } from './stage.ts';
import type { TimeScale } from './timeScale.ts';

export const TIME_AXIS_PX = 28;
const AXIS_PX = 13;
const TICK_PX = 5;

export class TimeAxisSurface implements StageDrawing {
  private readonly host: HTMLElement;
  private readonly family: string;
  private plot: uPlot | null = null;
  private ticks: StageTicks = { ticks: [], fine: [], labels: [] };
  theme: Theme = 'light';

  constructor(host: HTMLElement, family: string) {
    this.host = host;
    this.family = family;
  }

  lookAt(_visible: Stretch, _width: number): void {
    // Ticks come with every drawing; there is nothing to ask for.
  }

  draw(scale: TimeScale, ticks: StageTicks): void {
    this.ticks = ticks;
    const width = scale.width + LEFT_GUTTER + RIGHT_GUTTER;
    this.plot ??= this.makePlot(width);
    if (this.plot.width !== width) this.plot.setSize({ width, height: TIME_AXIS_PX });
    const { plot } = this;
    plot.batch(() => plot.setScale('x', { min: scale.startS, max: scale.endS }));
  }

  close(): void {
    this.plot?.destroy();
    this.plot = null;
  }

  private makePlot(width: number): uPlot {
    const axis: uPlot.Axis = {
      scale: 'x',
      side: 2,
      size: TIME_AXIS_PX - 2,
      gap: 3,
      font: `${AXIS_PX}px ${this.family}`,
      incrs: [1e9],
      splits: () => this.ticks.ticks,
      values: () => this.ticks.labels,
      stroke: () => PANE_COLOURS.axisInk[this.theme],
      grid: { show: false },
      ticks: { show: true, size: TICK_PX, width: 1, stroke: () => PANE_COLOURS.edge[this.theme] },
      border: { show: true, width: 1, stroke: () => PANE_COLOURS.edge[this.theme] },
    };
    const options: uPlot.Options = {
      width,
      height: TIME_AXIS_PX,
      padding: [2, RIGHT_GUTTER, 0, LEFT_GUTTER],
      legend: { show: false },
      cursor: { show: false },
      scales: { x: { time: false, auto: false } },
      series: [{}],
      axes: [axis],
    };
    return new uPlot(options, [[0, 1]], this.host);
  }
}
