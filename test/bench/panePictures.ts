// Watches from inside the page what stands in the panes while a capture opens: at short intervals, where each pane has
// ink, on a coarse grid, so that the edges of lines do not count.

import type { Page } from 'playwright';

/** Where the panes had ink at a moment, ms since the watch began. */
export interface PaneSight {
  readonly atMs: number;
  /** One a pane, from the top: 1 for each cell of the grid with ink, 0 for each without. */
  readonly ink: readonly string[];
  /** Whether the first rows stand for a capture that is still being read. */
  readonly firstRows: boolean;
}

/** The grid laid over each pane. */
const COLUMNS = 48;
const ROWS = 12;

declare global {
  interface Window {
    benchSights: PaneSight[];
    benchWatching: boolean;
  }
}

/** Begins to watch. */
export async function watchPanes(page: Page): Promise<void> {
  await page.evaluate(watch, [COLUMNS, ROWS] as const);
}

/** Ends the watch and gives what was seen. */
export async function sightsOf(page: Page): Promise<readonly PaneSight[]> {
  return page.evaluate(() => {
    window.benchWatching = false;
    return window.benchSights;
  });
}

/** The first moment at which some of a trace stands in a pane. */
export function firstInk(sights: readonly PaneSight[]): number {
  return sights.find(({ ink }) => ink.some((cells) => cells.includes('1')))?.atMs ?? Number.NaN;
}

/**
 * The first moment at which the traces of the whole capture stand in all panes, from one side to the other. Where the
 * program goes on to a stretch of it by itself, that comes later.
 */
export function wholeInk(sights: readonly PaneSight[]): number {
  const end = sights.at(-1)?.ink ?? [];
  const rows = sights.findLastIndex(({ firstRows }) => firstRows);
  const whole = sights.find(
    ({ ink }, at) =>
      at > rows &&
      ink.length === end.length &&
      ink.every((cells, i) => columnsOf(cells) >= columnsOf(end[i] ?? '') - 1),
  );
  return whole?.atMs ?? Number.NaN;
}

/**
 * The moment from which the traces stand in all panes as they stand in the end: from one side to the other, and none of
 * their ink moves any more. Marks that are laid over them later add ink and take none away.
 */
export function allInk(sights: readonly PaneSight[]): number {
  const end = sights.at(-1)?.ink ?? [];
  const other = sights.findLastIndex(
    ({ ink }) => ink.length !== end.length || ink.some((cells, i) => !staysIn(cells, end[i] ?? '')),
  );
  return sights[other + 1]?.atMs ?? Number.NaN;
}

/** Whether `cells` have ink in as many columns as `end`, and all of it, but for one cell in fifty, is there in the end. */
function staysIn(cells: string, end: string): boolean {
  const inked = [...cells].filter((cell) => cell === '1').length;
  const lost = [...cells].filter((cell, i) => cell === '1' && end[i] !== '1').length;
  return lost * 50 <= inked && columnsOf(cells) === columnsOf(end);
}

function columnsOf(cells: string): number {
  return new Set([...cells].flatMap((cell, i) => (cell === '1' ? [i % COLUMNS] : []))).size;
}

function watch([columns, rows]: readonly [number, number]): void {
  const EVERY_MS = 40;
  const began = performance.now();
  let lookedMs = began - EVERY_MS;
  window.benchSights = [];
  window.benchWatching = true;
  // What was not drawn anew stands as it stood: looking at it again would cost more than all the program draws.
  const known = new WeakMap<HTMLCanvasElement, string>();
  const context = CanvasRenderingContext2D.prototype;
  const clearRect = context.clearRect;
  context.clearRect = function (this: CanvasRenderingContext2D, ...area) {
    if (this.canvas instanceof HTMLCanvasElement) known.delete(this.canvas);
    clearRect.apply(this, area);
  };
  const inkNow = (canvas: HTMLCanvasElement): string => {
    const ink = known.get(canvas) ?? inkOf(canvas);
    known.set(canvas, ink);
    return ink;
  };
  const inkOf = (canvas: HTMLCanvasElement): string => {
    const { width, height } = canvas;
    const bytes = canvas.getContext('2d')?.getImageData(0, 0, width, height).data.buffer ?? new ArrayBuffer(0);
    // A pixel as one number, and the last one's colour remembered.
    const pixels = new Uint32Array(bytes);
    const cells = new Uint8Array(columns * rows);
    let last = 0;
    let coloured = false;
    for (let i = 0; i < pixels.length; i++) {
      const pixel = pixels[i] ?? 0;
      if (pixel !== last) {
        last = pixel;
        const [red, green, blue] = [pixel & 255, (pixel >>> 8) & 255, (pixel >>> 16) & 255];
        // Traces have a colour; grid and figures have none.
        coloured = Math.max(red, green, blue) - Math.min(red, green, blue) >= 60;
      }
      if (!coloured) continue;
      const [x, y] = [i % width, Math.floor(i / width)];
      cells[Math.floor((y * rows) / height) * columns + Math.floor((x * columns) / width)] = 1;
    }
    return cells.join('');
  };
  const look = (): void => {
    if (!window.benchWatching) return;
    requestAnimationFrame(look);
    const nowMs = performance.now();
    if (nowMs - lookedMs < EVERY_MS) return;
    lookedMs = nowMs;
    const canvases = [...document.querySelectorAll<HTMLCanvasElement>('.tracePane canvas')];
    const firstRows = document.querySelector('.beginningWords') !== null;
    window.benchSights.push({ atMs: nowMs - began, ink: canvases.map(inkNow), firstRows });
  };
  look();
}
