import { describe, expect, it } from 'vitest';
import {
  abandonGesture,
  beginGesture,
  endGesture,
  type GestureDeed,
  type GestureState,
  moveGesture,
  type Press,
} from '../../../../renderer/plot/gesture.ts';
import { TimeScale } from '../../../../renderer/plot/timeScale.ts';
import type { PointerTool } from '../../../../renderer/plot/traceStackProps.ts';

/** 100 px from pixel 50 on are 10 s from second 20 on: a pixel is a tenth of a second. */
const scale = new TimeScale({ startS: 20, endS: 30 }, 50, 100);
const limits = { startS: 0, endS: 100, leastSpanS: 0.5 };
const press: Press = { x: 60, button: 0, shift: false, space: false };

function begun(tool: PointerTool, how: Partial<Press> = {}): GestureState {
  const state = beginGesture({ ...press, ...how }, tool, scale);
  if (state === null) throw new Error('The press began nothing.');
  return state;
}

/** Everything that a drag through these pixels does, move by move; the last pixel is where the pointer comes up. */
function drag(state: GestureState, ...xs: readonly number[]): GestureDeed[] {
  const deeds: GestureDeed[] = [];
  let now = state;
  for (const x of xs) {
    const step = moveGesture(now, x, limits);
    now = step.state;
    deeds.push(...step.deeds);
  }
  return [...deeds, ...endGesture(now, xs.at(-1) ?? state.fromX, limits)];
}

describe('a drag with the marking tool', () => {
  it('shows the stretch while it moves and marks it only at the release', () => {
    const deeds = drag(begun('mark'), 90, 100);
    expect(deeds.slice(0, -1)).toEqual([
      { kind: 'preview', stretch: { startS: 21, endS: 24 } },
      { kind: 'preview', stretch: { startS: 21, endS: 25 } },
      { kind: 'preview', stretch: null },
    ]);
    expect(deeds.at(-1)).toEqual({ kind: 'mark', stretch: { startS: 21, endS: 25 } });
  });

  it('works backwards too', () => {
    expect(drag(begun('mark', { x: 100 }), 60).at(-1)).toEqual({ kind: 'mark', stretch: { startS: 21, endS: 25 } });
  });

  it('stops at the edge of the paper', () => {
    expect(drag(begun('mark'), 4000).at(-1)).toEqual({ kind: 'mark', stretch: { startS: 21, endS: 30 } });
  });

  it('is dropped by Escape before the release, and nothing is marked', () => {
    const { state } = moveGesture(begun('mark'), 90, limits);
    expect(abandonGesture(state)).toEqual([{ kind: 'preview', stretch: null }]);
  });

  it('is a click as long as the pointer only trembles', () => {
    expect(drag(begun('mark'), 62, 61)).toEqual([{ kind: 'click', timeS: 21 }]);
  });
});

describe('a drag that pans', () => {
  it('keeps what was grabbed under the pointer, and is one step of the view', () => {
    expect(drag(begun('pan'), 70, 80)).toEqual([
      { kind: 'look', stretch: { startS: 19, endS: 29 }, step: false },
      { kind: 'look', stretch: { startS: 18, endS: 28 }, step: false },
      { kind: 'look', stretch: { startS: 18, endS: 28 }, step: true },
    ]);
  });

  it.each([
    ['the middle button', { button: 1 }],
    ['the Space key', { space: true }],
  ])('is begun by %s with any tool', (_words, how) => {
    for (const tool of ['mark', 'zoom', 'note'] as const) {
      expect(drag(begun(tool, how), 80).every((deed) => deed.kind === 'look')).toBe(true);
    }
  });

  it('goes back to where it began on Escape', () => {
    const { state } = moveGesture(begun('pan'), 90, limits);
    expect(abandonGesture(state)).toEqual([{ kind: 'look', stretch: { startS: 20, endS: 30 }, step: true }]);
  });
});

describe('the other tools', () => {
  it('zoom: the view becomes the dragged stretch', () => {
    expect(drag(begun('zoom'), 110).at(-1)).toEqual({ kind: 'look', stretch: { startS: 21, endS: 26 }, step: true });
  });

  it('note: a drag pins a stretch, a click a moment', () => {
    expect(drag(begun('note'), 110).at(-1)).toEqual({ kind: 'note', startS: 21, endS: 26 });
    expect(drag(begun('note'), 61)).toEqual([{ kind: 'note', startS: 21, endS: null }]);
  });

  it('Shift with a click sets the second cursor', () => {
    expect(drag(begun('mark', { shift: true }), 60)).toEqual([{ kind: 'secondCursor', timeS: 21 }]);
  });

  it('the right button begins nothing', () => {
    expect(beginGesture({ ...press, button: 2 }, 'mark', scale)).toBeNull();
  });
});
