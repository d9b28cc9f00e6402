// Every colour that is drawn in a pane against every ground that it can lie on, window tints and guide bands included.

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ROLES } from '../../../../core/capture/roles.ts';
import { PANE_KINDS } from '../../../../renderer/panes/index.ts';
import {
  PANE_COLOURS,
  type PaneColour,
  type Theme,
  TRACE_COLOURS,
  traceDash,
  traceWidth,
} from '../../../../renderer/style/traceColours.ts';
import { contrast, laidOver } from '../../../support/contrast.ts';

const GROUNDS: readonly PaneColour[] = ['paper', 'tint', 'tintSelected', 'tintMarking'];
/** Lines that carry meaning by themselves (WCAG 2.2, 1.4.11). */
const LINES: readonly PaneColour[] = ['guide', 'ghost', 'edge', 'edgeSelected', 'cursor'];

const tokens = readFileSync(new URL('../../../../renderer/style/tokens.css', import.meta.url), 'utf8');

/** Grounds of a theme: paper and tints, each also under the band of a guide. */
function groundsOf(theme: Theme): [string, string][] {
  return GROUNDS.flatMap((name): [string, string][] => {
    const plain = PANE_COLOURS[name][theme];
    return [
      [name, plain],
      [`${name} in a guide band`, laidOver(PANE_COLOURS.guideBand[theme], plain)],
    ];
  });
}

describe.each(['light', 'dark'] as const)('the %s theme', (theme) => {
  describe.each(groundsOf(theme))('on %s', (_name, ground) => {
    it.each(ROLES)('draws %s with 3 : 1', (role) => {
      expect(contrast(TRACE_COLOURS[role][theme], ground)).toBeGreaterThanOrEqual(3);
    });

    it.each(LINES)('draws %s with 3 : 1', (line) => {
      expect(contrast(PANE_COLOURS[line][theme], ground)).toBeGreaterThanOrEqual(3);
    });

    it('writes words with 4.5 : 1', () => {
      expect(contrast(PANE_COLOURS.axisInk[theme], ground)).toBeGreaterThanOrEqual(4.5);
    });
  });

  it('keeps guides fainter than the faintest trace, by weight or by contrast', () => {
    const guide = contrast(PANE_COLOURS.guide[theme], PANE_COLOURS.paper[theme]);
    for (const role of ROLES) {
      // A guide is one pixel wide and broken.
      const strength = contrast(TRACE_COLOURS[role][theme], PANE_COLOURS.paper[theme]) * traceWidth(role);
      expect(strength).toBeGreaterThan(guide);
    }
  });

  it('takes its paper from the table of the program', () => {
    const opening = theme === 'light' ? ':root {' : ":root[data-theme='dark'] {";
    const block = tokens.slice(tokens.indexOf(opening), tokens.indexOf('\n}', tokens.indexOf(opening)));
    expect(/--paper: (#[0-9a-f]{6});/.exec(block)?.[1]).toBe(PANE_COLOURS.paper[theme]);
  });

  it('never gives two roles of one pane the same colour', () => {
    for (const kind of PANE_KINDS) {
      const colours = kind.roles.map((role) => TRACE_COLOURS[role][theme]);
      expect(new Set(colours).size).toBe(colours.length);
    }
  });

  it('keeps front and rear sensor apart in grey print: in lightness and in weight', () => {
    const [front, rear] = [TRACE_COLOURS.upstreamO2[theme], TRACE_COLOURS.downstreamO2[theme]];
    expect(contrast(front, rear)).toBeGreaterThan(theme === 'light' ? 1.3 : 1);
    expect(traceWidth('downstreamO2')).toBeGreaterThanOrEqual(1.4 * traceWidth('upstreamO2'));
  });
});

describe('a broken line', () => {
  it('tells banks, a sensor behind a second brick and both sides of a comparison apart', () => {
    const dashes = [
      traceDash({ bank: 1, sensor: 1 }),
      traceDash({ bank: 2, sensor: 1 }),
      traceDash({ bank: 1, sensor: 3 }),
      traceDash({ bank: 1, sensor: 1, second: true }),
      traceDash({ bank: 2, sensor: 1, second: true }),
    ];
    expect(new Set(dashes.map((dash) => dash.join())).size).toBe(dashes.length);
    expect(dashes[0]).toEqual([]);
    expect(traceDash({ bank: null, sensor: null })).toEqual([]);
  });
});
