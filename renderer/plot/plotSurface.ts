// One canvas with axes, grid and traces. uPlot draws axes, grid and scales; the traces come from paths of our own. It is
// told what to draw and draws when it is told: it listens to nothing and asks for no frame.

import uPlot from 'uplot';
import type { TraceView } from '../../core/capture/traceView.ts';
import { PANE_COLOURS, type Theme } from '../style/traceColours.ts';
import { ColumnStore } from './columnStore.ts';
import { drawGuides, type ShownGuide } from './guideDrawing.ts';
import { paneAxes, type SurfaceStyle, type ValueTicks } from './paneAxes.ts';
import { RIGHT_GUTTER, type StageTicks } from './stage.ts';
import type { TimeScale } from './timeScale.ts';
import { drawTrace, type PaperMap } from './tracePath.ts';

/** One trace as it is drawn. */
export interface DrawnTrace {
  readonly view: TraceView;
  readonly shiftS: number;
  readonly colour: string;
  /** CSS px. */
  readonly width: number;
  readonly dash: readonly number[];
}

export interface SurfaceContent {
  readonly theme: Theme;
  readonly traces: readonly DrawnTrace[];
  readonly low: number;
  readonly high: number;
  readonly valueTicks: ValueTicks;
  readonly guides: readonly ShownGuide[];
}

const DOT_RADIUS_PX = 2.25;
const DOT_SPACING_PX = 9;
const NOTHING: SurfaceContent = {
  theme: 'light',
  traces: [],
  low: 0,
  high: 1,
  valueTicks: { at: [], words: [] },
  guides: [],
};

export class PlotSurface {
  private readonly host: HTMLElement;
  private readonly style: SurfaceStyle;
  private plot: uPlot | null = null;
  private content: SurfaceContent = NOTHING;
  private ticks: StageTicks = { ticks: [], fine: [], labels: [] };
  private width = 0;
  private height = 0;
  private readonly columns: ColumnStore[] = [];
  private readonly map: PaperMap = { left: 0, right: 1, top: 0, bottom: 1, startS: 0, endS: 1, low: 0, high: 1 };

  constructor(host: HTMLElement, style: SurfaceStyle) {
    this.host = host;
    this.style = style;
  }

  /** Height of the paper in CSS px; 0 before it has a size. */
  get paperHeight(): number {
    return Math.max(0, this.height - 2 * this.style.margin);
  }

  setSize(width: number, height: number): void {
    if (width === this.width && height === this.height) return;
    this.width = width;
    this.height = height;
    if (this.plot !== null && width > 0 && height > 0) this.plot.setSize({ width, height });
  }

  show(content: SurfaceContent): void {
    this.content = content;
  }

  draw(scale: TimeScale, ticks: StageTicks): void {
    if (this.width === 0 || this.height === 0) return;
    this.ticks = ticks;
    const { low, high, traces } = this.content;
    if (this.plot !== null && this.plot.series.length !== traces.length + 1) this.clear();
    this.plot ??= this.makePlot(traces.length);
    const { plot } = this;
    traces.forEach((trace, i) => {
      const series = plot.series[i + 1];
      if (series === undefined) return;
      series.width = trace.width;
      series.dash = trace.dash.map((part) => part * uPlot.pxRatio);
    });
    plot.batch(() => {
      plot.setScale('x', { min: scale.startS, max: scale.endS });
      plot.setScale('y', { min: low, max: high });
    });
  }

  close(): void {
    this.clear();
  }

  private clear(): void {
    this.plot?.destroy();
    this.plot = null;
  }

  private makePlot(count: number): uPlot {
    const traces = Array.from({ length: count }, (_, i) => this.seriesOf(i));
    // uPlot wants numbers of its own before it draws anything; the paths never look at them.
    const data: uPlot.AlignedData = [[0, 1], ...Array.from({ length: count }, () => [null, null])];
    const options: uPlot.Options = {
      width: this.width,
      height: this.height,
      padding: [this.style.margin, RIGHT_GUTTER, this.style.margin, this.style.leftGutter],
      legend: { show: false },
      cursor: { show: false },
      select: { show: false, left: 0, top: 0, width: 0, height: 0 },
      scales: { x: { time: false, auto: false }, y: { auto: false, range: [0, 1] } },
      series: [{}, ...traces],
      axes: paneAxes(this.style, {
        theme: () => this.content.theme,
        ticks: () => this.ticks,
        valueTicks: () => this.content.valueTicks,
      }),
      hooks: {
        drawAxes: [(plot) => this.beforeTraces(plot)],
        drawSeries: [(plot, index) => this.fillColumns(plot, index - 1)],
      },
    };
    return new uPlot(options, data, this.host);
  }

  private seriesOf(index: number): uPlot.Series {
    const colour = (): string => this.content.traces[index]?.colour ?? 'transparent';
    return {
      scale: 'y',
      auto: false,
      pxAlign: 0,
      points: { show: false },
      stroke: colour,
      fill: colour,
      paths: (plot) => this.pathsOf(plot, index),
    };
  }

  private pathsOf(plot: uPlot, index: number): uPlot.Series.Paths | null {
    const trace = this.content.traces[index];
    if (trace === undefined) return null;
    const ratio = uPlot.pxRatio;
    const wish = {
      shiftS: trace.shiftS,
      dash: trace.dash.map((part) => part * ratio),
      thickness: trace.width * ratio,
      dotRadius: Math.max(DOT_RADIUS_PX, trace.width) * ratio,
      dotSpacing: DOT_SPACING_PX * ratio,
    };
    const line = new Path2D();
    const dots = new Path2D();
    const columns = this.columnsAt(index);
    columns.clear();
    drawTrace(trace.view, this.mapOf(plot), wish, { line, dots, columns });
    return columns.empty ? { stroke: line, fill: dots } : null;
  }

  private columnsAt(index: number): ColumnStore {
    const known = this.columns[index];
    if (known !== undefined) return known;
    const made = new ColumnStore();
    this.columns[index] = made;
    return made;
  }

  /** What the path of a trace left to be filled column by column, inside the paper. */
  private fillColumns(plot: uPlot, index: number): void {
    const columns = this.columns[index];
    const trace = this.content.traces[index];
    if (columns === undefined || columns.empty || trace === undefined) return;
    const { ctx, bbox } = plot;
    ctx.save();
    ctx.beginPath();
    ctx.rect(bbox.left, bbox.top, bbox.width, bbox.height);
    ctx.clip();
    ctx.fillStyle = trace.colour;
    columns.fill(ctx);
    ctx.restore();
    columns.clear();
  }

  private mapOf(plot: uPlot): PaperMap {
    const { map } = this;
    const { x, y } = plot.scales;
    map.left = plot.bbox.left;
    map.right = plot.bbox.left + plot.bbox.width;
    map.top = plot.bbox.top;
    map.bottom = plot.bbox.top + plot.bbox.height;
    map.startS = x?.min ?? 0;
    map.endS = x?.max ?? 1;
    map.low = y?.min ?? 0;
    map.high = y?.max ?? 1;
    return map;
  }

  private beforeTraces(plot: uPlot): void {
    // The library leaves the joins as they are between two traces. Round ones cost a third of the drawing and cannot be
    // told from bevelled ones at these weights.
    plot.ctx.lineJoin = 'bevel';
    const { guides, theme } = this.content;
    if (guides.length === 0) return;
    drawGuides(plot.ctx, this.mapOf(plot), guides, {
      line: PANE_COLOURS.guide[theme],
      band: PANE_COLOURS.guideBand[theme],
      ratio: uPlot.pxRatio,
    });
  }
}
