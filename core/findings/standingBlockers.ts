import { blocker, inOrder } from './blockersOf.ts';
import type { Blocker } from './finding.ts';
import type { JudgedWindow } from './judgeWindow.ts';

/** The windows a verdict rests on, and what stands in its way. */
export interface Standing {
  readonly used: readonly JudgedWindow[];
  readonly blockers: readonly Blocker[];
}

/** Blockers of the test and not of the car: another window of the same drive may do without them. */
const OF_THE_TEST = new Set([
  'coldEngine',
  'coldConverter',
  'openLoop',
  'idleOnly',
  'unsteadySpeed',
  'windowShort',
  'tooFewValues',
]);

/** A blocker of the car that shows in this share of the good windows, by length, stands for the car. */
const STANDS_FROM = 0.5;
/** Connectors do not change places between two windows: one sure sign is enough. */
const STANDS_AT_ONCE = 'sensorsExchanged';

/**
 * Which blockers stand for a bank. Windows in which the test itself was right are preferred; a fault of the car stands
 * if it shows in half of them. The verdict then rests on the windows that do not show it, with the snaps and fuel cuts.
 * Where no window was right, the blockers of those that came nearest stand.
 */
export function standingBlockers(windows: readonly JudgedWindow[]): Standing {
  const raised = windows.filter(
    ({ score }) => score.kind === 'hold' || score.kind === 'cruise' || score.kind === 'mixed',
  );
  const passing = windows.filter(({ score }) => score.kind === 'snap' || score.kind === 'fuelCut');
  const right = raised.filter(({ score }) => score.blockers.every(({ id }) => !OF_THE_TEST.has(id)));
  if (right.length === 0) return noneRight(raised.length > 0 ? raised : windows, passing);
  const standing = ofTheCar(right);
  const clean = right.filter(({ score }) => score.blockers.length === 0);
  return { used: [...(clean.length > 0 ? clean : right), ...passing], blockers: inOrder(standing) };
}

function ofTheCar(right: readonly JudgedWindow[]): Blocker[] {
  const total = lengthOf(right);
  const shown = (id: string) => lengthOf(right.filter(({ score }) => score.blockers.some((one) => one.id === id)));
  const all = right.flatMap(({ score }) => score.blockers);
  return all.filter(({ id }) => id === STANDS_AT_ONCE || shown(id) >= STANDS_FROM * total);
}

function noneRight(candidates: readonly JudgedWindow[], passing: readonly JudgedWindow[]): Standing {
  if (candidates.length === 0) return { used: passing, blockers: [blocker('noWindow', null)] };
  const ofTest = ({ score }: JudgedWindow) => score.blockers.filter(({ id }) => OF_THE_TEST.has(id)).length;
  const fewest = Math.min(...candidates.map(ofTest));
  const nearest = candidates.filter((window) => ofTest(window) === fewest);
  const blockers = inOrder(nearest.flatMap(({ score }) => score.blockers));
  const onlyPassing = candidates.every((window) => passing.includes(window));
  return {
    used: [...nearest.filter((window) => !passing.includes(window)), ...passing],
    blockers: onlyPassing || blockers.length === 0 ? inOrder([blocker('noWindow', null), ...blockers]) : blockers,
  };
}

function lengthOf(windows: readonly JudgedWindow[]): number {
  return windows.reduce((sum, { score }) => sum + score.endS - score.startS, 0);
}
