// Windows and offers that lie too close together to be told apart at this zoom become one tab that says how many they are.

import type { ShownWindow } from './traceStackProps.ts';

/** Beginnings closer than this leave no room for words, px. An offer says nothing yet that could be read in less. */
export const TOGETHER_PX = { offer: 100, marked: 56 } as const;

/** A tab: of one window or offer, or of several that zooming in takes apart. */
export interface TabSubject extends ShownWindow {
  /** What it stands for: itself, or all of a crowd. */
  readonly ids: readonly string[];
}

/**
 * Windows and offers, crowded ones joined among their like, in order of their beginning; `secondsPerPixel` 0 joins nothing.
 * As many as there are lanes stand side by side and are not joined; neither is the selected one. Panning changes nothing
 * of it.
 */
export function joinCrowds(
  windows: readonly ShownWindow[],
  selectedId: string | null,
  secondsPerPixel: number,
  lanes: number,
): readonly TabSubject[] {
  const others = windows.filter(({ id }) => id !== selectedId);
  const crowds = [
    ...crowdsOf(
      others.filter(({ offer }) => offer),
      TOGETHER_PX.offer * secondsPerPixel,
    ),
    ...crowdsOf(
      others.filter(({ offer }) => !offer),
      TOGETHER_PX.marked * secondsPerPixel,
    ),
  ];
  return [
    ...windows.filter(({ id }) => id === selectedId).map(alone),
    ...crowds.flatMap((crowd) => (crowd.length > lanes ? joined(crowd) : crowd.map(alone))),
  ].sort((a, b) => a.startS - b.startS);
}

/** From the left, each crowd as long as its members begin within `withinS` of its first. */
function crowdsOf(windows: readonly ShownWindow[], withinS: number): ShownWindow[][] {
  const crowds: ShownWindow[][] = [];
  for (const window of [...windows].sort((a, b) => a.startS - b.startS)) {
    const crowd = crowds.at(-1);
    const first = crowd?.[0];
    if (crowd !== undefined && first !== undefined && window.startS - first.startS < withinS) crowd.push(window);
    else crowds.push([window]);
  }
  return crowds;
}

const alone = (window: ShownWindow): TabSubject => ({ ...window, ids: [window.id] });

function joined(crowd: readonly ShownWindow[]): TabSubject[] {
  const [first] = crowd;
  if (first === undefined) return [];
  const endS = Math.max(...crowd.map((one) => one.endS));
  const id = `${first.id} and ${crowd.length - 1} more`;
  const name = `${crowd.length} ${first.offer ? 'offers' : 'windows'}`;
  return [{ ...first, id, name, endS, finding: null, ids: crowd.map((one) => one.id) }];
}
