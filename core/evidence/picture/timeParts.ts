// What belongs to time in the picture: strips and tabs of windows, flags of notes, and the axis under the panes.

import { element, escapeText, joined, type Markup } from '../formats/markup.ts';
import type { PaneBox } from '../tracePicture.ts';
import { showNumber } from '../words/numbers.ts';
import { PAPER_INKS } from './inks.ts';
import type { TracePictureInput } from './picture.ts';
import { ticks } from './ticks.ts';

const LABEL_PX = 90;
/** Mean width of a letter at 13 px; only decides where a tab's words are cut. */
const LETTER_PX = 7.2;
/** A tab with room for fewer says nothing. */
const FEWEST_LETTERS = 4;

/** From seconds to px, straight. */
export function timeToX({ startS, endS }: TracePictureInput, { left, right }: PaneBox): (timeS: number) => number {
  return (timeS) => left + ((timeS - startS) / (endS - startS)) * (right - left);
}

/** Tinted strips behind all panes, one for each window that is in sight. */
export function windowStrips(input: TracePictureInput, box: PaneBox): Markup {
  return joined(
    inSight(input, box).map(({ x1, x2 }) =>
      element('rect', {
        x: tenth(x1),
        y: box.top,
        width: tenth(x2 - x1),
        height: box.bottom - box.top,
        fill: PAPER_INKS.tint,
        stroke: PAPER_INKS.edge,
      }),
    ),
  );
}

/** The tabs over the strips, cut to their strips, and the flags of the notes. */
export function windowTabs(input: TracePictureInput, box: PaneBox): Markup {
  const strips = inSight(input, box);
  const tabs = strips.flatMap(({ x1, words }, i) => {
    // A tab may reach beyond a narrow strip, but not into the next one.
    const end = Math.min(strips[i + 1]?.x1 ?? box.right, box.right);
    const room = Math.floor((end - x1 - 12) / LETTER_PX);
    if (room < FEWEST_LETTERS) return [];
    return element('text', { x: tenth(x1 + 6), y: box.top + 17, 'font-weight': 600 }, escapeText(cut(words, room)));
  });
  const xOf = timeToX(input, box);
  const flags = input.notes
    .filter(({ startS }) => startS >= input.startS && startS <= input.endS)
    .map(({ startS, words }) =>
      joined(
        element('path', {
          d: `M${tenth(xOf(startS))} ${box.bottom}V${box.top - 4}h10v7h-10`,
          fill: 'none',
          stroke: PAPER_INKS.ink,
        }),
        element('text', { x: tenth(xOf(startS) + 13), y: box.top - 5 }, escapeText(cut(words, 30))),
      ),
    );
  return joined(tabs, flags);
}

/** Ticks and their seconds under the panes, with what they count. */
export function timeAxis(input: TracePictureInput, box: PaneBox): Markup {
  const xOf = timeToX(input, box);
  const most = Math.max(2, Math.floor((box.right - box.left) / LABEL_PX));
  const marks = ticks(input.startS, input.endS, Math.min(12, most)).map(({ value, digits }) =>
    joined(
      element('path', { d: `M${tenth(xOf(value))} ${box.bottom}v5`, stroke: PAPER_INKS.soft }),
      element(
        'text',
        { x: tenth(xOf(value)), y: box.bottom + 19, 'text-anchor': 'middle', fill: PAPER_INKS.soft },
        escapeText(showNumber(value, digits, input.decimalSign)),
      ),
    ),
  );
  const name = element(
    'text',
    { x: box.right, y: box.bottom + 36, 'text-anchor': 'end', fill: PAPER_INKS.soft },
    escapeText('Time from the start of the capture, s'),
  );
  return joined(marks, name);
}

function inSight(input: TracePictureInput, box: PaneBox): { x1: number; x2: number; words: string }[] {
  const xOf = timeToX(input, box);
  return [...input.windows]
    .sort((a, b) => a.startS - b.startS)
    .filter(({ startS, endS }) => endS > input.startS && startS < input.endS)
    .map(({ startS, endS, words }) => ({
      x1: Math.max(box.left, xOf(startS)),
      x2: Math.min(box.right, xOf(endS)),
      words,
    }));
}

function cut(words: string, letters: number): string {
  const all = [...words];
  return all.length <= letters ? words : `${all.slice(0, Math.max(1, letters - 1)).join('')}…`;
}

/** To a tenth of a pixel, which is as fine as print gets. */
export function tenth(px: number): number {
  return Math.round(px * 10) / 10;
}
