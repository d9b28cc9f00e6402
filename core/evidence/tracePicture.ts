// The stacked traces as one picture that stands alone: an SVG for the sheet and for the export. Light, with title, axes,
// units, legend, windows and guides; texts are texts, so that they can be searched and read out (T-INJ-4).

import { documentOf, element, escapeText, joined } from './formats/markup.ts';
import { PAPER_INKS } from './picture/inks.ts';
import { paneMarkup } from './picture/pane.ts';
import type { TracePictureInput } from './picture/picture.ts';
import { timeAxis, windowStrips, windowTabs } from './picture/timeParts.ts';
import { showNumber } from './words/numbers.ts';

/** px around and between the panes. */
const LEFT = 72;
const RIGHT = 18;
const TOP = 66;
const BOTTOM = 62;
const BETWEEN = 34;
/** Room for the tabs of the windows over the first pane. */
const TABS = 14;

export const PICTURE_FONT = '"Segoe UI", "Noto Sans", "Liberation Sans", "Helvetica Neue", Arial, sans-serif';

/** Where the panes lie, px. All share left and right. */
export interface PaneBox {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/**
 * The picture as an SVG document. The same input gives the same bytes. A stretch that does not run forwards, no panes or
 * a size that leaves no room are mistakes of the caller and throw.
 */
export function tracePicture(input: TracePictureInput): string {
  const { width, height, panes, startS, endS } = input;
  if (!(startS < endS) || panes.length === 0 || width < 480 || height < 320) throw new RangeError('nothing to draw');
  const boxes = boxesOf(input);
  const whole: PaneBox = { left: LEFT, right: width - RIGHT, top: TOP, bottom: height - BOTTOM };
  const root = element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${width} ${height}`,
      width,
      height,
      role: 'img',
      'font-family': PICTURE_FONT,
      'font-size': 13,
      fill: PAPER_INKS.ink,
    },
    element('title', {}, escapeText(input.title)),
    element('desc', {}, escapeText(describe(input))),
    element('rect', { width, height, fill: PAPER_INKS.paper }),
    element('text', { x: LEFT, y: 24, 'font-size': 17, 'font-weight': 600 }, escapeText(input.title)),
    windowStrips(input, whole),
    joined(panes.map((pane, i) => paneMarkup(pane, boxes[i] ?? whole, i, input))),
    windowTabs(input, whole),
    timeAxis(input, whole),
    element('text', { x: LEFT, y: height - 12, fill: PAPER_INKS.soft }, escapeText(input.foot)),
  );
  return documentOf('<?xml version="1.0" encoding="UTF-8"?>', root);
}

function boxesOf({ width, height, panes }: TracePictureInput): PaneBox[] {
  const room = height - TOP - TABS - BOTTOM - BETWEEN * panes.length;
  const each = room / panes.length;
  if (each < 24) throw new RangeError('the picture is too low for its panes');
  return panes.map((_, i) => {
    const top = Math.round(TOP + TABS + BETWEEN * (i + 1) + each * i);
    return { left: LEFT, right: width - RIGHT, top, bottom: Math.round(top + each) };
  });
}

/** What the picture shows, for those who cannot see it. Also the sheet's alternative text. */
export function describe({ startS, endS, panes, windows, notes, decimalSign }: TracePictureInput): string {
  const stretch = `${showNumber(startS, 1, decimalSign)} to ${showNumber(endS, 1, decimalSign)} s`;
  const shown = panes.map((pane) => `${pane.words} in ${pane.unit === '1' ? 'pure numbers' : pane.unit}`);
  const marked = windows.map(({ words }) => words);
  return [
    `Traces from ${stretch}: ${shown.join('; ')}.`,
    marked.length === 0 ? 'No windows.' : `Windows: ${marked.join('; ')}.`,
    notes.length === 0 ? '' : `Notes: ${notes.map(({ words }) => words).join('; ')}.`,
  ]
    .filter((part) => part !== '')
    .join(' ');
}
