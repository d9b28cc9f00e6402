// Guide lines and bands: drawn over the grid and under the traces. Their names stand in the head of the pane, where no
// trace can cover them.

import type { PaperMap } from './tracePath.ts';

/** A guide in the unit that is kept, with its words in the unit that is shown: "0.45 V switch point". */
export interface ShownGuide {
  readonly low: number;
  /** Equal to `low` for a line. */
  readonly high: number;
  readonly words: string;
}

export interface GuideInk {
  readonly line: string;
  readonly band: string;
  /** Canvas px in a CSS px. */
  readonly ratio: number;
}

export const GUIDE_DASH_PX = [6, 4];

export function drawGuides(
  context: CanvasRenderingContext2D,
  map: PaperMap,
  guides: readonly ShownGuide[],
  { line, band, ratio }: GuideInk,
): void {
  context.save();
  context.beginPath();
  context.rect(map.left, map.top, map.right - map.left, map.bottom - map.top);
  context.clip();
  context.strokeStyle = line;
  context.fillStyle = band;
  const width = Math.max(1, Math.round(ratio));
  context.lineWidth = width;
  context.setLineDash(GUIDE_DASH_PX.map((part) => part * ratio));
  // A line of an odd width is crisp between two pixels, one of an even width on them.
  for (const guide of guides) drawGuide(context, map, guide, (width % 2) / 2);
  context.restore();
}

function drawGuide(context: CanvasRenderingContext2D, map: PaperMap, guide: ShownGuide, crisp: number): void {
  const yOf = (value: number): number =>
    Math.round(map.bottom - ((value - map.low) / (map.high - map.low)) * (map.bottom - map.top)) + crisp;
  const top = yOf(guide.high);
  const bottom = yOf(guide.low);
  if (bottom > top) context.fillRect(map.left, top, map.right - map.left, bottom - top);
  context.beginPath();
  for (const y of top === bottom ? [top] : [top, bottom]) {
    context.moveTo(map.left, y);
    context.lineTo(map.right, y);
  }
  context.stroke();
}
