import type { Bank } from '../capture/roles.ts';
import type { ThermalReading } from '../thermal/thermal.ts';
import { blocker, inOrder } from './blockersOf.ts';
import type { BankVerdict, Blocker, Reason, WindowScore } from './finding.ts';
import { findingOf } from './findingOf.ts';
import { judgeByTemperature } from './judgeByTemperature.ts';
import { nextTestsFor } from './nextTests/nextTestsFor.ts';
import { probabilityOf } from './probability.ts';
import { findingSentence } from './sentences.ts';
import { logOddsOf, signedReason } from './signedReason.ts';
import { thermalReason } from './thermalReason.ts';

/** Evidence about one converter: windows of its bank and temperatures taken on it. */
export interface BankEvidence {
  readonly bank: Bank;
  readonly windows: readonly WindowScore[];
  readonly thermal: readonly ThermalReading[];
  /** Whether the vehicle has a sensor behind the converter, as far as anybody said. */
  readonly rearSensor: 'yes' | 'no' | 'unknown';
}

/**
 * The verdict on one bank. Windows of one capture see the same converter through the same sensors, so their evidence is
 * averaged, by length, and not added; temperatures are added once. A blocker stands unless a window is free of blockers.
 */
export function judgeBank({ bank, windows, thermal, rearSensor }: BankEvidence): BankVerdict {
  const noRear = windows.every(({ blockers }) => blockers.some(({ id }) => id === 'noRearSensor'));
  if (noRear && thermal.length > 0 && rearSensor !== 'yes') return judgeByTemperature(bank, windows, thermal);
  const judged = windows.filter(({ probabilityNotStoring }) => probabilityNotStoring !== null);
  const free = judged.filter(({ blockers }) => blockers.length === 0);
  const used = free.length > 0 ? free : judged;
  const blockers = free.length > 0 ? [] : standing(windows, judged);
  const reasons = [...meanReasons(used), ...thermalReason(thermal, 1)].sort((a, b) => b.weight - a.weight);
  const probability = reasons.length > 0 ? probabilityOf(logOddsOf(reasons)) : null;
  const finding = probability === null ? 'cannotTell' : findingOf(probability, blockers.length > 0);
  const conditions = used.flatMap((window) => window.conditions);
  return {
    bank,
    finding,
    probabilityNotStoring: probability,
    blockers,
    reasons,
    nextTests: nextTestsFor(finding, blockers, conditions),
    sentence: findingSentence(bank, finding, probability, blockers),
  };
}

/** Blockers of the windows that come nearest to being usable; without any window, that there is none. */
function standing(windows: readonly WindowScore[], judged: readonly WindowScore[]): Blocker[] {
  const raised = windows.filter(({ kind }) => kind === 'hold' || kind === 'cruise' || kind === 'mixed');
  const from = raised.length > 0 ? raised : judged.length > 0 ? judged : windows;
  if (from.length === 0) return [blocker('noWindow', null)];
  const fewest = Math.min(...from.map(({ blockers }) => blockers.length));
  const nearest = from.filter(({ blockers }) => blockers.length <= fewest + 1);
  const found = inOrder(nearest.flatMap(({ blockers }) => blockers));
  return found.length > 0 ? found : [blocker('noWindow', null)];
}

/** Mean weight of each reason over the windows, by length. */
function meanReasons(windows: readonly WindowScore[]): Reason[] {
  const total = windows.reduce((sum, { startS, endS }) => sum + endS - startS, 0);
  const sums = new Map<string, { weight: number; strongest: Reason; at: number }>();
  for (const { startS, endS, reasons } of windows) {
    for (const reason of reasons) {
      const share = (endS - startS) / total;
      const signed = (reason.for === 'notStoring' ? reason.weight : -reason.weight) * share;
      const known = sums.get(reason.id);
      const strongest = known && known.at >= share ? known.strongest : reason;
      sums.set(reason.id, { weight: (known?.weight ?? 0) + signed, strongest, at: Math.max(known?.at ?? 0, share) });
    }
  }
  return [...sums].map(([id, { weight, strongest }]) => signedReason(id, weight, strongest.detail));
}
