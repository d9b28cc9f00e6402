// Offers that lie too close together to be told apart at this zoom become one tab that says how many they are.

import type { ShownWindow } from './traceStackProps.ts';

/** Offers whose beginnings lie closer than this have no room for their words. */
export const TOGETHER_PX = 100;

/** A tab: of one window or offer, or of several offers that zooming in takes apart. */
export interface TabSubject extends ShownWindow {
  /** How many offers it stands for; 1 for a window or an offer by itself. */
  readonly count: number;
}

/**
 * Windows and offers with crowded offers joined, in order of their beginning; `secondsPerPixel` 0 joins nothing. As many as
 * there are lanes stand side by side and are not joined; neither is the selected one. Panning changes nothing of it.
 */
export function joinOffers(
  windows: readonly ShownWindow[],
  selectedId: string | null,
  secondsPerPixel: number,
  lanes: number,
): readonly TabSubject[] {
  const alone = windows.filter(({ id, offer }) => !offer || id === selectedId);
  const crowds: ShownWindow[][] = [];
  for (const offer of windows.filter((one) => !alone.includes(one)).sort((a, b) => a.startS - b.startS)) {
    const crowd = crowds.at(-1);
    const first = crowd?.[0];
    if (crowd !== undefined && first !== undefined && offer.startS - first.startS < TOGETHER_PX * secondsPerPixel)
      crowd.push(offer);
    else crowds.push([offer]);
  }
  return [
    ...alone.map((one) => ({ ...one, count: 1 })),
    ...crowds.flatMap((crowd) => (crowd.length > lanes ? joined(crowd) : crowd.map((one) => ({ ...one, count: 1 })))),
  ].sort((a, b) => a.startS - b.startS);
}

function joined(crowd: readonly ShownWindow[]): TabSubject[] {
  const [first] = crowd;
  if (first === undefined) return [];
  const endS = Math.max(...crowd.map((one) => one.endS));
  const id = `${first.id} and ${crowd.length - 1} more`;
  return [{ ...first, id, name: `${crowd.length} offers`, endS, count: crowd.length }];
}
