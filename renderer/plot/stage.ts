// What all panes of one stack share: the visible stretch, the one time scale made from it, the ticks, the cursor. Panes
// and overlays sign up here and are drawn or placed when the scheduler says so, never on their own.

import type { Stretch } from '../../core/windows/window.ts';
import { momentWords, type TimeForm, timeWords } from '../words/captureTimes.ts';
import { secondDigits } from './axisWords.ts';
import { type FrameClient, type FrameScheduler, frame } from './frame.ts';
import { look } from './settled.ts';
import { TimeScale } from './timeScale.ts';
import { fineTimeStep, timeStep, timeTicks } from './timeTicks.ts';
import { sameStretch } from './zoom.ts';

/** Ticks of the time axis, made once a frame for all panes. */
export interface StageTicks {
  readonly ticks: number[];
  readonly fine: number[];
  readonly labels: string[];
}

/** Something with a canvas. */
export interface StageDrawing {
  /** The view that is wanted has changed; ask for what will be drawn. */
  lookAt(visible: Stretch, width: number): void;
  draw(scale: TimeScale, ticks: StageTicks): void;
}

/** Something in the page that has a place in time. Called after every change of the scale, inside the frame. */
export type Placer = (scale: TimeScale) => void;

/** Left and right of the paper, px: room for the labels of the values, and for half a label of the time. */
export const LEFT_GUTTER = 64;
export const RIGHT_GUTTER = 28;

const LABEL_PX: Readonly<Record<TimeForm, number>> = { s: 84, 'min:s': 96, 'h:min:s': 112 };
/** Width of a figure of the axis, and of the name of the axis in the left gutter, px. */
const FIGURE_PX = 7.8;
const NAME_PX: Readonly<Record<TimeForm, number>> = { s: 54, 'min:s': 46, 'h:min:s': 60 };
/** How long a zoom takes to show where it went, ms. */
const MOVE_MS = 120;

interface Movement {
  readonly from: Stretch;
  readonly to: Stretch;
  beganMs: number | null;
}

export class Stage implements FrameClient {
  readonly form: TimeForm;
  private readonly frame: FrameScheduler;
  private readonly drawings = new Set<StageDrawing>();
  private readonly staleDrawings = new Set<StageDrawing>();
  private readonly placers = new Set<Placer>();
  private readonly cursorHearers = new Set<() => void>();
  private width = 0;
  private shown: Stretch;
  private movement: Movement | null = null;
  private viewStale = true;
  private ticksNow: StageTicks | null = null;
  private scaleNow: TimeScale | null = null;
  /** Where the view is, or is going to. */
  visible: Stretch;
  cursorS: number | null = null;
  secondCursorS: number | null = null;

  constructor(visible: Stretch, form: TimeForm, scheduler: FrameScheduler = frame) {
    this.visible = withLength(visible);
    this.shown = this.visible;
    this.form = form;
    this.frame = scheduler;
  }

  /** The scale as it was last drawn; null until the stack has a size. */
  get scale(): TimeScale | null {
    return this.scaleNow;
  }

  /** Digits of a second that make sense at this zoom. */
  get digits(): number {
    return this.scaleNow === null ? 1 : Math.max(1, secondDigits(this.scaleNow.secondsPerPixel));
  }

  /** "61.2 s" or "1:01.2", as fine as a pixel. */
  moment(timeS: number): string {
    return momentWords(timeS, this.form, this.digits);
  }

  /** Changes the view; `moves` shows on the way where it went. */
  look(wanted: Stretch, moves: boolean): void {
    const stretch = withLength(wanted);
    if (sameStretch(stretch, this.visible)) return;
    this.visible = stretch;
    this.movement = moves && this.width > 0 ? { from: this.shown, to: stretch, beganMs: null } : null;
    if (this.movement === null) this.shown = stretch;
    this.markViewStale();
    this.askAll();
  }

  /** Width of the whole stack, CSS px; the paper is narrower by both gutters. */
  resize(width: number): void {
    if (width === this.width || width <= LEFT_GUTTER + RIGHT_GUTTER) return;
    this.width = width;
    this.markViewStale();
    this.askAll();
  }

  /** Draws everything once more, and asks again: the screen or the typeface has changed. */
  redraw(): void {
    this.markViewStale();
    this.askAll();
  }

  setCursor(timeS: number | null): void {
    if (timeS === this.cursorS) return;
    this.cursorS = timeS;
    for (const hear of this.cursorHearers) hear();
  }

  setSecondCursor(timeS: number | null): void {
    if (timeS === this.secondCursorS) return;
    this.secondCursorS = timeS;
    for (const hear of this.cursorHearers) hear();
  }

  /** Tells of every change of either cursor, at once. */
  onCursors(hear: () => void): () => void {
    this.cursorHearers.add(hear);
    return () => this.cursorHearers.delete(hear);
  }

  addDrawing(drawing: StageDrawing): () => void {
    this.drawings.add(drawing);
    this.staleDrawings.add(drawing);
    this.frame.markStale(this);
    if (this.width > 0) drawing.lookAt(this.visible, this.paperWidth());
    return () => {
      this.drawings.delete(drawing);
      this.staleDrawings.delete(drawing);
    };
  }

  /** One drawing has something new to show; the others stay as they are. */
  markStale(drawing: StageDrawing): void {
    if (!this.drawings.has(drawing)) return;
    this.staleDrawings.add(drawing);
    this.frame.markStale(this);
  }

  /** Calls `place` after every change of the scale; at once where there is one. */
  addPlacer(place: Placer): () => void {
    this.placers.add(place);
    if (this.scaleNow !== null) place(this.scaleNow);
    return () => this.placers.delete(place);
  }

  close(): void {
    this.frame.forget(this);
  }

  changeView(nowMs: number): boolean {
    const { movement } = this;
    if (movement !== null) {
      movement.beganMs ??= nowMs;
      const share = Math.min(1, (nowMs - movement.beganMs) / MOVE_MS);
      this.shown = share >= 1 ? movement.to : between(movement.from, movement.to, eased(share));
      this.viewStale = true;
      if (share >= 1) this.movement = null;
    }
    return this.movement !== null;
  }

  draw(): void {
    if (this.width === 0) return;
    if (this.viewStale || this.scaleNow === null || this.ticksNow === null) {
      this.scaleNow = new TimeScale(this.shown, LEFT_GUTTER, this.paperWidth());
      this.ticksNow = this.makeTicks(this.scaleNow);
      this.viewStale = false;
      for (const drawing of this.drawings) this.staleDrawings.add(drawing);
      for (const place of this.placers) place(this.scaleNow);
    }
    for (const drawing of this.staleDrawings) drawing.draw(this.scaleNow, this.ticksNow);
    this.staleDrawings.clear();
    queueMicrotask(look);
  }

  private markViewStale(): void {
    this.viewStale = true;
    this.frame.markStale(this);
  }

  private askAll(): void {
    if (this.width === 0) return;
    for (const drawing of this.drawings) drawing.lookAt(this.visible, this.paperWidth());
  }

  private paperWidth(): number {
    return this.width - LEFT_GUTTER - RIGHT_GUTTER;
  }

  private makeTicks(scale: TimeScale): StageTicks {
    const stretch = { startS: scale.startS, endS: scale.endS };
    const step = timeStep(scale.endS - scale.startS, scale.width, LABEL_PX[this.form]);
    const ticks = timeTicks(stretch, step);
    const digits = step < 1 ? secondDigits(step) : 0;
    return {
      ticks,
      fine: timeTicks(stretch, fineTimeStep(step)),
      labels: ticks.map((timeS) => {
        const words = timeWords(timeS, this.form, digits);
        // The name of the axis stands in the left gutter; a label that would run into it is left out.
        return scale.xOf(timeS) - (words.length * FIGURE_PX) / 2 < NAME_PX[this.form] ? '' : words;
      }),
    };
  }
}

/** A capture of one moment has a stretch without length, which no scale can show: it is given a second. */
function withLength(stretch: Stretch): Stretch {
  return stretch.endS > stretch.startS ? stretch : { startS: stretch.startS, endS: stretch.startS + 1 };
}

/** Between two views as a zoom goes: lengths in equal ratios, around the point that both share. */
function between(from: Stretch, to: Stretch, share: number): Stretch {
  const spanFrom = from.endS - from.startS;
  const spanTo = to.endS - to.startS;
  const span = spanFrom ** (1 - share) * spanTo ** share;
  const way = Math.abs(spanTo - spanFrom) < 1e-9 * spanFrom ? share : (span - spanFrom) / (spanTo - spanFrom);
  const startS = from.startS + (to.startS - from.startS) * way;
  return { startS, endS: startS + span };
}

function eased(share: number): number {
  return 1 - (1 - share) ** 3;
}
