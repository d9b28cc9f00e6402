// One pane at work: keeps its views up to date with the stage, decides on its vertical scale, and hands both to its
// canvas. What was loaded is drawn stretched until the answer is there.

import type { TraceView } from '../../core/capture/traceView.ts';
import type { Stretch } from '../../core/windows/window.ts';
import type { Theme } from '../style/traceColours.ts';
import { numberWords } from '../words/numbers.ts';
import type { ShownGuide } from './guideDrawing.ts';
import type { SurfaceStyle, ValueTicks } from './paneAxes.ts';
import { type DrawnTrace, PlotSurface } from './plotSurface.ts';
import type { ShownUnit } from './shownUnit.ts';
import type { Stage, StageDrawing, StageTicks } from './stage.ts';
import type { TimeScale } from './timeScale.ts';
import type { PaneLayout } from './traceStackProps.ts';
import { stepDigits, valueStep, valueTicks } from './valueTicks.ts';
import { extentOf, type SeenExtent } from './viewExtent.ts';
import { type Feed, ViewLoader } from './viewLoader.ts';

/** A trace of the pane, and in which feed its views come. */
export interface PaneTrace {
  readonly feed: number;
  readonly channelId: string;
  readonly colour: string;
  readonly width: number;
  readonly dash: readonly number[];
}

export interface PaneWish {
  readonly theme: Theme;
  readonly feeds: readonly Feed[];
  /** For each feed, what is added to its times. */
  readonly shifts: readonly number[];
  readonly traces: readonly PaneTrace[];
  /** Traces that are given, not asked for. */
  readonly ghosts: readonly DrawnTrace[];
  readonly scale: PaneLayout['scale'];
  readonly quantityRange: readonly [number, number];
  readonly shown: ShownUnit;
  readonly guides: readonly ShownGuide[];
}

/** What the pane shows, for the words that stand in for a trace that is not there. */
export type PaneSight = 'drawn' | 'noSamples' | 'above' | 'below' | 'failed';

/** Room over and under a fitted trace, as a share of its extent. */
const FIT_ROOM = 0.08;
const TICK_SPACING_PX = 24;

export class PaneDrawing implements StageDrawing {
  private readonly stage: Stage;
  private readonly surface: PlotSurface;
  private readonly onSight: (sight: PaneSight) => void;
  private readonly leave: () => void;
  private wish: PaneWish;
  private loaders: ViewLoader[] = [];
  private visible: Stretch;
  private paperWidth = 0;
  private fitted: readonly [number, number] | null = null;
  private fitWanted = true;
  private fittedSpanS = 0;
  private begun = false;
  private sight: PaneSight = 'drawn';

  constructor(
    stage: Stage,
    host: HTMLElement,
    style: SurfaceStyle,
    wish: PaneWish,
    onSight: (sight: PaneSight) => void,
  ) {
    this.stage = stage;
    this.wish = wish;
    this.visible = stage.visible;
    this.onSight = onSight;
    this.loaders = this.makeLoaders();
    this.surface = new PlotSurface(host, style);
    this.leave = stage.addDrawing(this);
  }

  /** The vertical scale as it is drawn, in the unit that is kept. */
  get range(): readonly [number, number] {
    const { scale, quantityRange } = this.wish;
    if (scale.kind === 'hand') return [scale.low, scale.high];
    return scale.kind === 'auto' ? (this.fitted ?? quantityRange) : quantityRange;
  }

  update(wish: PaneWish): void {
    const before = this.wish;
    this.wish = wish;
    if (!sameFeeds(before.feeds, wish.feeds)) {
      for (const loader of this.loaders) loader.close();
      this.loaders = this.makeLoaders();
      this.fitWanted = true;
      this.ask();
    }
    this.loaders.forEach((loader, i) => {
      loader.shiftS = wish.shifts[i] ?? 0;
    });
    if (wish.shifts.some((shift, i) => shift !== before.shifts[i])) this.ask();
    // Choosing "fitted" again fits again, so the same words in a new object are a wish of their own.
    if (wish.scale !== before.scale && wish.scale.kind === 'auto') this.fitWanted = true;
    this.fitIfWanted();
    this.judgeSight();
    this.stage.markStale(this);
  }

  setSize(width: number, height: number): void {
    this.surface.setSize(width, height);
    this.stage.markStale(this);
  }

  lookAt(visible: Stretch, width: number): void {
    this.visible = visible;
    this.paperWidth = width;
    // A fitted scale follows a zoom, never a pan: it may not jump under the eye.
    const span = visible.endS - visible.startS;
    if (Math.abs(span - this.fittedSpanS) > 1e-6 * span) this.fitWanted = true;
    this.ask();
  }

  draw(scale: TimeScale, ticks: StageTicks): void {
    // Axes alone would be made anew with the first traces, which are there a moment later.
    if (!this.begun && this.waitsForAll()) return;
    this.begun = true;
    this.surface.show(this.content(this.drawnTraces()));
    this.surface.draw(scale, ticks);
  }

  /** Whether traces are asked for and none has come. */
  private waitsForAll(): boolean {
    const waits = ({ upToDate, views }: ViewLoader): boolean => !upToDate && views.length === 0;
    return this.loaders.length > 0 && this.loaders.every(waits);
  }

  /** Views and traces as they are drawn now, for pictures. */
  drawnTraces(): DrawnTrace[] {
    const own = this.wish.traces.flatMap((trace) => {
      const view = this.viewOf(trace);
      const shiftS = this.wish.shifts[trace.feed] ?? 0;
      return view === null ? [] : [{ view, shiftS, colour: trace.colour, width: trace.width, dash: trace.dash }];
    });
    return [...this.wish.ghosts, ...own];
  }

  close(): void {
    this.leave();
    for (const loader of this.loaders) loader.close();
    this.surface.close();
  }

  private content(traces: readonly DrawnTrace[]) {
    const [low, high] = this.range;
    const { theme, guides } = this.wish;
    return { theme, traces, low, high, guides, valueTicks: this.valueTicks(low, high) };
  }

  private valueTicks(low: number, high: number): ValueTicks {
    const { shown } = this.wish;
    const [from, to] = [shown.toShown(low), shown.toShown(high)];
    const height = Math.max(this.surface.paperHeight, TICK_SPACING_PX);
    const step = valueStep(from, to, height, TICK_SPACING_PX);
    const ticks = valueTicks(from, to, step);
    const digits = stepDigits(step);
    return { at: ticks.map(shown.toKept), words: ticks.map((tick) => numberWords(tick, digits)) };
  }

  private makeLoaders(): ViewLoader[] {
    return this.wish.feeds.map((feed, i) => {
      const loader = new ViewLoader(feed, () => this.loaded());
      loader.shiftS = this.wish.shifts[i] ?? 0;
      return loader;
    });
  }

  private ask(): void {
    if (this.paperWidth === 0) return;
    const width = Math.max(1, Math.round(this.paperWidth * devicePixelRatio));
    for (const loader of this.loaders) loader.want(this.visible, width);
    this.fitIfWanted();
    this.judgeSight();
  }

  private loaded(): void {
    this.fitIfWanted();
    this.judgeSight();
    this.stage.markStale(this);
  }

  private viewOf(trace: PaneTrace): TraceView | null {
    return this.loaders[trace.feed]?.views.find((view) => view.channelId === trace.channelId) ?? null;
  }

  private seen(): SeenExtent {
    const views = this.wish.traces.flatMap((trace) => {
      const view = this.viewOf(trace);
      return view === null ? [] : [{ view, shiftS: this.wish.shifts[trace.feed] ?? 0 }];
    });
    return extentOf(views, this.visible);
  }

  private fitIfWanted(): void {
    if (!this.fitWanted || this.wish.scale.kind !== 'auto') return;
    if (!this.loaders.every((loader) => loader.upToDate)) return;
    const { low, high, entries } = this.seen();
    if (entries === 0) return;
    const room = Math.max((high - low) * FIT_ROOM, Math.abs(high) * 1e-3, 1e-6);
    this.fitted = [low - room, high + room];
    this.fitWanted = false;
    this.fittedSpanS = this.visible.endS - this.visible.startS;
  }

  private judgeSight(): void {
    const sight = this.sightNow();
    if (sight === this.sight) return;
    this.sight = sight;
    this.onSight(sight);
  }

  /** Nothing is said of a view that is still asked for: what is drawn meanwhile is the one before. */
  private sightNow(): PaneSight {
    if (this.loaders.some((loader) => loader.failed)) return 'failed';
    if (!this.loaders.every((loader) => loader.upToDate)) return 'drawn';
    const { low, high, entries } = this.seen();
    const [from, to] = this.range;
    if (entries === 0) return 'noSamples';
    if (low > to) return 'above';
    return high < from ? 'below' : 'drawn';
  }
}

function sameFeeds(one: readonly Feed[], other: readonly Feed[]): boolean {
  return (
    one.length === other.length &&
    one.every((feed, i) => feed.source === other[i]?.source && feed.channelIds.join() === other[i]?.channelIds.join())
  );
}
