// From a view to what is drawn: columns where entries stand close, a line or steps where they do not. Gaps stay gaps, a
// sample that stands alone becomes a dot. Nothing is smoothed and no peak is left out. Nothing is allocated here.

import type { TraceView } from '../../core/capture/traceView.ts';
import { type ColumnSink, columnsOf } from './traceColumns.ts';

/** Where times and values fall on the canvas, in its own pixels; y grows downwards. */
export interface PaperMap {
  left: number;
  right: number;
  top: number;
  bottom: number;
  startS: number;
  endS: number;
  low: number;
  high: number;
}

export interface LineSink {
  moveTo(x: number, y: number): void;
  lineTo(x: number, y: number): void;
}

export interface DotSink {
  moveTo(x: number, y: number): void;
  arc(x: number, y: number, radius: number, startAngle: number, endAngle: number): void;
}

/** Where a trace goes: a line to be stroked, dots to be filled, columns to be filled one by one. */
export interface TraceSinks {
  readonly line: LineSink;
  readonly dots: DotSink;
  readonly columns: ColumnSink;
}

export interface TraceWish {
  /** Added to every time of the view: the second side of a comparison is moved, ordinary traces are not. */
  readonly shiftS: number;
  /** Lengths on and off of a broken line, canvas px; empty for an unbroken one. */
  readonly dash: readonly number[];
  /** Weight of the line, canvas px. */
  readonly thickness: number;
  readonly dotRadius: number;
  /** Samples at least this far apart on average are dotted, canvas px. */
  readonly dotSpacing: number;
}

/** Beyond this many pixels beside the paper nothing is drawn: a path keeps only single precision. */
const FAR = 4096;
const WHOLE_TURN = 2 * Math.PI;

/** Entries closer than this are columns, canvas px: further apart columns would look like blocks, samples like beads. */
const CLOSEST_LINE_PX = { envelope: 2, samples: 1 } as const;

/** Adds `view` to its sinks. */
export function drawTrace(view: TraceView, map: PaperMap, wish: TraceWish, sinks: TraceSinks): void {
  const first = firstDrawn(view.timesS, map.startS - wish.shiftS);
  const end = endDrawn(view.timesS, map.endS - wish.shiftS);
  if (end <= first) return;
  const pitch = pitchOf(view, first, end, map);
  const breaks = wish.dash.length > 0 && view.kind === 'samples';
  if (pitch <= CLOSEST_LINE_PX[view.kind] && !breaks) columnsOf(view, first, end, pitch, map, wish, sinks.columns);
  else if (view.kind === 'envelope') drawEnvelope(view, first, end, map, wish, sinks);
  else drawSamples(view, first, end, map, wish, sinks);
}

/** Index of the last entry before `startS`, so that the line runs in from the edge; 0 where there is none. */
export function firstDrawn(timesS: Float64Array, startS: number): number {
  return Math.max(0, countBefore(timesS, startS) - 1);
}

/** One past the first entry after `endS`; the length where there is none. */
export function endDrawn(timesS: Float64Array, endS: number): number {
  return Math.min(timesS.length, countBefore(timesS, endS) + 1);
}

/** Canvas px between two entries, on the average. */
function pitchOf({ timesS }: TraceView, first: number, end: number, map: PaperMap): number {
  const spanS = (timesS[end - 1] ?? 0) - (timesS[first] ?? 0);
  const perS = (map.right - map.left) / (map.endS - map.startS);
  return end - first < 2 ? Number.POSITIVE_INFINITY : (spanS * perS) / (end - first - 1);
}

function countBefore(timesS: Float64Array, timeS: number): number {
  let low = 0;
  let high = timesS.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((timesS[middle] ?? Number.NaN) < timeS) low = middle + 1;
    else high = middle;
  }
  return low;
}

function drawSamples(
  view: TraceView,
  first: number,
  end: number,
  map: PaperMap,
  wish: TraceWish,
  { line, dots }: TraceSinks,
): void {
  const { timesS, steps, gapS } = view;
  const dotted = (map.right - map.left) / (end - first) >= wish.dotSpacing;
  let lastS = Number.NEGATIVE_INFINITY;
  let lastX = 0;
  let lastY = 0;
  let alone = false;
  for (let i = first; i < end; i++) {
    const timeS = timesS[i] ?? Number.NaN;
    const { x, y } = placed(view, i, map, wish);
    if (timeS - lastS <= gapS) {
      if (steps) line.lineTo(x, lastY);
      line.lineTo(x, y);
      alone = false;
    } else {
      if (alone) dot(dots, lastX, lastY, wish.dotRadius);
      line.moveTo(x, y);
      alone = !dotted;
    }
    if (dotted) dot(dots, x, y, wish.dotRadius);
    lastS = timeS;
    lastX = x;
    lastY = y;
  }
  if (alone) dot(dots, lastX, lastY, wish.dotRadius);
}

const point = { x: 0, y: 0 };

/** Where sample `i` falls; one far beside the paper is brought nearer along the line to its neighbour. Used up at once. */
function placed(
  view: TraceView,
  i: number,
  map: PaperMap,
  wish: TraceWish,
): { readonly x: number; readonly y: number } {
  point.x = xOf(view, i, map, wish);
  point.y = yOf(view, i, map);
  const bound = point.x < map.left ? map.left - FAR : map.right + FAR;
  const isFar = point.x < map.left - FAR || point.x > map.right + FAR;
  if (!isFar) return point;
  const neighbour = point.x < map.left ? i + 1 : i - 1;
  if (neighbour >= 0 && neighbour < view.timesS.length && !view.steps) {
    point.y = crossing(point.x, point.y, xOf(view, neighbour, map, wish), yOf(view, neighbour, map), bound);
  }
  point.x = bound;
  return point;
}

function xOf({ timesS }: TraceView, i: number, map: PaperMap, wish: TraceWish): number {
  const perS = (map.right - map.left) / (map.endS - map.startS);
  return map.left + ((timesS[i] ?? Number.NaN) + wish.shiftS - map.startS) * perS;
}

function yOf({ low }: TraceView, i: number, map: PaperMap): number {
  return map.bottom - (((low[i] ?? Number.NaN) - map.low) * (map.bottom - map.top)) / (map.high - map.low);
}

function drawEnvelope(
  view: TraceView,
  first: number,
  end: number,
  map: PaperMap,
  wish: TraceWish,
  { line, dots }: TraceSinks,
): void {
  const { timesS, low, high, steps, gapS } = view;
  const perS = (map.right - map.left) / (map.endS - map.startS);
  const perValue = (map.bottom - map.top) / (map.high - map.low);
  let lastS = Number.NEGATIVE_INFINITY;
  let lastX = 0;
  let lastY = 0;
  let alone = false;
  for (let i = first; i < end; i++) {
    const timeS = timesS[i] ?? Number.NaN;
    const x = within(map, map.left + (timeS + wish.shiftS - map.startS) * perS);
    const yLow = map.bottom - ((low[i] ?? Number.NaN) - map.low) * perValue;
    const yHigh = map.bottom - ((high[i] ?? Number.NaN) - map.low) * perValue;
    if (timeS - lastS <= gapS) {
      if (steps) line.lineTo(x, lastY);
      // Enter the bucket at the end that lies nearer, leave it at the other: one line without crossing back.
      const enterLow = Math.abs(lastY - yLow) <= Math.abs(lastY - yHigh);
      line.lineTo(x, enterLow ? yLow : yHigh);
      lastY = enterLow ? yHigh : yLow;
      if (yLow !== yHigh) line.lineTo(x, lastY);
      alone = false;
    } else {
      if (alone) dot(dots, lastX, lastY, wish.dotRadius);
      line.moveTo(x, yLow);
      if (yLow !== yHigh) line.lineTo(x, yHigh);
      alone = yLow === yHigh;
      lastY = yHigh;
    }
    lastS = timeS;
    lastX = x;
  }
  if (alone) dot(dots, lastX, lastY, wish.dotRadius);
}

function dot(dots: DotSink, x: number, y: number, radius: number): void {
  dots.moveTo(x + radius, y);
  dots.arc(x, y, radius, 0, WHOLE_TURN);
}

function within(map: PaperMap, x: number): number {
  return Math.min(map.right + FAR, Math.max(map.left - FAR, x));
}

function crossing(x0: number, y0: number, x1: number, y1: number, x: number): number {
  return x1 === x0 ? y1 : y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
}
