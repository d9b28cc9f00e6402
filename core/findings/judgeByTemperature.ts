import type { Bank } from '../capture/roles.ts';
import type { ThermalReading } from '../thermal/thermal.ts';
import { percent } from '../words/numbers.ts';
import { blocker } from './blockersOf.ts';
import { CALIBRATION } from './calibration.ts';
import type { DecisionCosts } from './costs.ts';
import type { BankVerdict, Blocker } from './finding.ts';
import type { JudgedWindow } from './judgeWindow.ts';
import { rankTests } from './nextTests/rankTests.ts';
import { probabilityOf } from './probability.ts';
import { converterName } from './sentences.ts';
import { logOddsOf } from './signedReason.ts';
import { thermalReason } from './thermalReason.ts';

/** What temperature alone is worth, said beside every finding that rests on it. */
const WORTH =
  'This rests on surface temperatures alone, which is weak proof: printed rules read the same rise in three ways.';

/**
 * The verdict where there is no sensor behind the converter: temperatures are all there is. They were taken on a warm,
 * raised engine, or nothing is said against the converter; and even then the probability stays far from certain.
 */
export function judgeByTemperature(
  bank: Bank,
  windows: readonly JudgedWindow[],
  thermal: readonly ThermalReading[],
  costs: DecisionCosts,
): BankVerdict {
  const reasons = thermalReason(thermal, CALIBRATION.decided.temperatureAloneTimes);
  const probability = probabilityOf(logOddsOf(reasons));
  const held = thermal.some(({ rpm }) => rpm !== null && rpm >= 1500) || windows.some(isHeatedHold);
  const working = probability <= 1 - CALIBRATION.decided.temperatureAloneFrom;
  const dead = probability >= CALIBRATION.decided.temperatureAloneFrom && held;
  const finding = working ? 'storing' : dead ? 'notStoring' : 'cannotTell';
  const blockers: Blocker[] =
    finding === 'cannotTell'
      ? [blocker('temperatureAlone', held ? null : 'The engine speed they were taken at was not recorded.')]
      : [];
  const said = working
    ? `at work by its temperatures (${percent(1 - probability)}).`
    : dead
      ? `not at work by its temperatures (${percent(probability)}).`
      : 'cannot tell yet by its temperatures.';
  const state = { finding, probabilityNotStoring: probability, reasons, conditions: [] } as const;
  return {
    bank,
    finding,
    probabilityNotStoring: probability,
    blockers,
    reasons,
    nextTests: rankTests({ ...state, blockers: [...blockers, blocker('temperatureAlone', null)] }, costs),
    sentence: `${converterName(bank)}: ${said} ${WORTH}`,
  };
}

function isHeatedHold({ score }: JudgedWindow): boolean {
  return score.kind === 'hold' && score.conditions.every(({ id, met }) => id !== 'engineWarm' || met !== false);
}
