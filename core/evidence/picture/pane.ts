// One pane of the picture: head with legend, grid with its values, guides, traces.

import { element, escapeText, joined, type Markup } from '../formats/markup.ts';
import type { PaneBox } from '../tracePicture.ts';
import { showNumber } from '../words/numbers.ts';
import { inkDash, inkWidth, PAPER_INKS, TRACE_INKS } from './inks.ts';
import type { PictureGuide, PicturePane, PictureTrace, TracePictureInput } from './picture.ts';
import { ticks } from './ticks.ts';
import { tenth, timeToX } from './timeParts.ts';
import { type PaneMap, tracePath } from './tracePath.ts';

const SWATCH_PX = 26;
/** Generous width of a letter at 13 px. */
const LETTER_PX = 7.4;

/** A pane and all that is in it. `place` tells its clipping area from the others'. */
export function paneMarkup(pane: PicturePane, box: PaneBox, place: number, input: TracePictureInput): Markup {
  const map = mapOf(pane, box, input);
  const clip = `pane${place}`;
  const area = { x: box.left, y: box.top, width: box.right - box.left, height: box.bottom - box.top };
  return element(
    'g',
    {},
    element('clipPath', { id: clip }, element('rect', area)),
    head(pane, box),
    scale(pane, box, map, input),
    element(
      'g',
      { 'clip-path': `url(#${clip})` },
      pane.guides.map((guide) => guideMarkup(guide, box, map)),
      pane.traces.map((trace) => traceMarkup(trace, map)),
      pane.guides.map((guide) => guideWords(guide, box, map)),
    ),
    element('rect', { ...area, fill: 'none', stroke: PAPER_INKS.edge }),
  );
}

function mapOf({ scale: [low, high] }: PicturePane, box: PaneBox, input: TracePictureInput): PaneMap {
  return {
    xOf: timeToX(input, box),
    yOf: (value) => box.bottom - ((value - low) / (high - low)) * (box.bottom - box.top),
  };
}

/** "Oxygen sensors, bank 1, V" at the left; a piece of each trace with its name at the right. */
function head({ words, unit, traces }: PicturePane, box: PaneBox): Markup {
  const y = box.top - 8;
  const name = unit === '1' ? words : `${words}, ${unit}`;
  let right = box.right;
  const told = traces.length < 2 ? [] : traces;
  const legend = [...told].reverse().map((trace) => {
    const start = right - trace.words.length * LETTER_PX - SWATCH_PX - 8;
    right = start - 14;
    return joined(
      element('path', { d: `M${tenth(start)} ${y - 4}h${SWATCH_PX}`, ...stroke(trace) }),
      element('text', { x: tenth(start + SWATCH_PX + 6), y }, escapeText(trace.words)),
    );
  });
  return joined(element('text', { x: box.left, y, 'font-weight': 600 }, escapeText(name)), legend.reverse());
}

function scale(pane: PicturePane, box: PaneBox, map: PaneMap, input: TracePictureInput): Markup {
  const [low, high] = pane.scale;
  const most = Math.max(2, Math.floor((box.bottom - box.top) / 22));
  return joined(
    ticks(low, high, Math.min(7, most)).map(({ value, digits }) => {
      const y = tenth(map.yOf(value));
      return joined(
        element('path', { d: `M${box.left} ${y}H${box.right}`, stroke: PAPER_INKS.grid }),
        element(
          'text',
          { x: box.left - 8, y: tenth(y + 4.5), 'text-anchor': 'end', fill: PAPER_INKS.soft },
          escapeText(showNumber(value, digits, input.decimalSign)),
        ),
      );
    }),
  );
}

function guideMarkup({ low, high }: PictureGuide, box: PaneBox, map: PaneMap): Markup {
  const edges = low === high ? [low] : [low, high];
  return joined(
    edges.map((value) =>
      element('path', {
        d: `M${box.left} ${tenth(map.yOf(value))}H${box.right}`,
        stroke: PAPER_INKS.guide,
        'stroke-dasharray': '6 4',
      }),
    ),
  );
}

/** Over the traces, with a rim of paper, so that they stay legible where a trace runs through them. */
function guideWords({ high, words }: PictureGuide, box: PaneBox, map: PaneMap): Markup {
  return element(
    'text',
    {
      x: box.right - 6,
      y: Math.max(box.top + 13, tenth(map.yOf(high) - 4)),
      'text-anchor': 'end',
      fill: PAPER_INKS.soft,
      stroke: PAPER_INKS.paper,
      'stroke-width': 4,
      'stroke-linejoin': 'round',
      'paint-order': 'stroke',
    },
    escapeText(words),
  );
}

function traceMarkup(trace: PictureTrace, map: PaneMap): Markup {
  return element('path', { d: tracePath(trace.view, map), ...stroke(trace) });
}

function stroke({ role, bank, sensor }: PictureTrace) {
  return {
    fill: 'none',
    stroke: TRACE_INKS[role],
    'stroke-width': inkWidth(role),
    'stroke-dasharray': inkDash(bank, sensor),
    'stroke-linejoin': 'round',
    'stroke-linecap': 'round',
  };
}
