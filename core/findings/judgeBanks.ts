import type { Capture } from '../capture/capture.ts';
import type { Bank } from '../capture/roles.ts';
import type { Brick } from '../record/schema.ts';
import type { ThermalReading } from '../thermal/thermal.ts';
import { banksToJudge } from '../windows/banksToJudge.ts';
import type { DecisionCosts } from './costs.ts';
import { embracesOf } from './embraces.ts';
import type { BankVerdict } from './finding.ts';
import { judgeBank } from './judgeBank.ts';
import type { JudgedWindow } from './judgeWindow.ts';
import { knownCodes } from './knownCodes.ts';
import { missingSensors } from './missingSensors.ts';

/** Everything that is known about a vehicle's converters at one time of its life. */
export interface BanksEvidence {
  readonly windows: readonly JudgedWindow[];
  /** Upper case. */
  readonly troubleCodes: readonly string[];
  readonly thermal: readonly ThermalReading[];
  /** Only this bank; null for all. */
  readonly bank: Bank;
  readonly captures: readonly Capture[];
  readonly rearSensor: 'yes' | 'no' | 'unknown';
  readonly costs: DecisionCosts;
  /** How the exhaust is laid out; empty where nobody said. */
  readonly bricks: readonly Brick[];
  /** Windows of a known-good twin. */
  readonly twin: readonly JudgedWindow[];
}

/** One verdict for each bank that has evidence, ascending; one for the whole engine where no bank has any. */
export function judgeBanks(evidence: BanksEvidence): [BankVerdict, ...BankVerdict[]] {
  const { windows, thermal, rearSensor, costs, twin } = evidence;
  const troubleCodes = knownCodes(evidence.captures, evidence.troubleCodes);
  const [first, ...others] = banksWithEvidence(evidence);
  const judge = (one: Bank): BankVerdict => {
    const verdict = judgeBank({
      bank: one,
      windows: windows.filter(({ score }) => score.bank === one || score.bank === null),
      missing: missingSensors(evidence.captures, one),
      // A pair without a bank belongs to the only converter there is; with two banks it says nothing about either.
      thermal: thermal.filter((pair) => pair.bank === one || (pair.bank === null && others.length === 0)),
      troubleCodes,
      rearSensor,
      costs,
      twin: twin.filter(({ score }) => score.bank === one || one === null || score.bank === null),
    });
    const embraces = embracesOf(evidence.captures, evidence.bricks, one);
    return embraces === null ? verdict : { ...verdict, embraces };
  };
  return [judge(first ?? null), ...others.map(judge)];
}

function banksWithEvidence({ windows, thermal, bank, captures }: BanksEvidence): Bank[] {
  if (bank !== null) return [bank];
  const named = new Set<1 | 2>();
  const name = (one: Bank): void => {
    if (one !== null) named.add(one);
  };
  for (const capture of captures) banksToJudge(capture).forEach(name);
  for (const { score } of windows) name(score.bank);
  for (const pair of thermal) name(pair.bank);
  return named.size > 0 ? [...named].sort() : [null];
}
