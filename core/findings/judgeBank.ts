import type { Bank } from '../capture/roles.ts';
import type { ThermalReading } from '../thermal/thermal.ts';
import { inOrder } from './blockersOf.ts';
import type { DecisionCosts } from './costs.ts';
import { decide } from './decide.ts';
import { drawReasons, strongestFirst } from './drawReasons.ts';
import { type Evidence, pool } from './evidence.ts';
import type { BankVerdict, Blocker } from './finding.ts';
import { judgeByTemperature } from './judgeByTemperature.ts';
import type { JudgedWindow } from './judgeWindow.ts';
import { rankTests } from './nextTests/rankTests.ts';
import { findingSentence } from './sentences.ts';
import { standingBlockers } from './standingBlockers.ts';
import { thermalReason } from './thermalReason.ts';

/** Evidence about one converter: windows of its bank and temperatures taken on it. */
export interface BankEvidence {
  readonly bank: Bank;
  readonly windows: readonly JudgedWindow[];
  /** Blockers of the captures as a whole, whatever their windows show. */
  readonly missing: readonly Blocker[];
  readonly thermal: readonly ThermalReading[];
  readonly troubleCodes: readonly string[];
  /** Whether the vehicle has a sensor behind the converter, as far as anybody said. */
  readonly rearSensor: 'yes' | 'no' | 'unknown';
  readonly costs: DecisionCosts;
  /** Windows of a known-good twin for the same bank; empty where none was given. */
  readonly twin: readonly JudgedWindow[];
}

/**
 * The verdict on one bank: the usable windows pooled into one body of evidence, its reasons with those of temperature,
 * and the blockers that stand. While one stands the finding is cannotTell, whatever the probability.
 */
export function judgeBank({
  bank,
  windows,
  missing,
  thermal,
  troubleCodes,
  rearSensor,
  costs,
  twin,
}: BankEvidence): BankVerdict {
  const noRear = windows.every(({ score }) => score.blockers.some(({ id }) => id === 'noRearSensor'));
  if (noRear && thermal.length > 0 && rearSensor !== 'yes') return judgeByTemperature(bank, windows, thermal, costs);
  const standing = standingBlockers(windows);
  const { used } = standing;
  const blockers = inOrder([...missing, ...standing.blockers]);
  const evidence = pool(
    used.map((window) => window.evidence),
    bank,
    troubleCodes,
    twinEvidence(twin, bank),
  );
  const reasons = strongestFirst([...drawReasons(evidence), ...thermalReason(thermal, 1)]);
  const decision = decide(reasons, blockers, evidence.fit()?.intervalFor2L ?? null);
  const conditions = used.flatMap(({ score }) => score.conditions);
  return {
    bank,
    ...decision,
    blockers,
    reasons,
    nextTests: rankTests({ ...decision, blockers, reasons, conditions }, costs),
    sentence: findingSentence(bank, decision.finding, decision.probabilityNotStoring, blockers),
  };
}

/**
 * What a healthy twin shows, from windows of it that no blocker stands against and that do not look worse than even;
 * null where there are none.
 */
function twinEvidence(twin: readonly JudgedWindow[], bank: Bank): Evidence | null {
  const clean = twin.filter(({ score }) => score.blockers.length === 0 && (score.probabilityNotStoring ?? 1) < 0.5);
  return clean.length > 0
    ? pool(
        clean.map(({ evidence }) => evidence),
        bank,
        [],
      )
    : null;
}
