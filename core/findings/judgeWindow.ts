import type { Capture } from '../capture/capture.ts';
import type { Bank } from '../capture/roles.ts';
import type { ConditionContext, ConditionResult } from '../conditions/condition.ts';
import { CONDITIONS } from '../conditions/index.ts';
import { deadGain } from '../measures/deadGain.ts';
import { MEASURES } from '../measures/index.ts';
import type { MeasureValue, WindowData } from '../measures/measure.ts';
import { slowAndFast } from '../measures/slowAndFast.ts';
import { cutWindow } from '../measures/windowData.ts';
import type { CaptureWindow } from '../windows/window.ts';
import { blockersOf } from './blockersOf.ts';
import type { Blocker, Reason, WindowScore } from './finding.ts';
import { findingOf } from './findingOf.ts';
import { nextTestsFor } from './nextTests/nextTestsFor.ts';
import { probabilityOf } from './probability.ts';
import { REASON_RULES } from './reasons/index.ts';
import type { Evidence } from './reasons/reasonRule.ts';
import { logOddsOf, signedReason } from './signedReason.ts';

/** Kinds of windows that are judged; in snaps and fuel cuts the sensors show life, not storage alone. */
const JUDGED: readonly CaptureWindow['kind'][] = ['hold', 'cruise', 'idle', 'mixed'];

/**
 * Judges one window for one bank: conditions and measures first, then reasons and blockers, then the finding. Never
 * throws for any capture or stretch. `troubleCodes` in upper case.
 */
export function judgeWindow(
  capture: Capture,
  window: CaptureWindow,
  bank: Bank,
  troubleCodes: readonly string[],
): WindowScore {
  const data = cutWindow(capture, window, bank);
  const measures = MEASURES.map((measure) => measure.compute(data));
  const byId = new Map(measures.map((value) => [value.id, value]));
  const conditions = judgeConditions({ ...data, measures: byId, troubleCodes });
  const blockers = blockersOf(data, conditions);
  const reasons = JUDGED.includes(window.kind) ? reasonsFor(data, byId, troubleCodes) : [];
  const verdict = decide(window, reasons, blockers);
  return {
    ...window,
    bank,
    conditions,
    measures,
    ...verdict,
    reasons,
    blockers,
    nextTests: nextTestsFor(verdict.finding, blockers, conditions),
  };
}

function judgeConditions(context: ConditionContext): ConditionResult[] {
  const asked = CONDITIONS.filter(({ kinds }) => kinds === 'all' || kinds.includes(context.window.kind));
  return asked.map((condition) => condition.judge(context));
}

function reasonsFor(
  data: WindowData,
  measures: ReadonlyMap<string, MeasureValue>,
  troubleCodes: readonly string[],
): Reason[] {
  const rear = data.downstream && data.downstream.series.values.length > 0 ? slowAndFast(data.downstream).fast : null;
  const evidence: Evidence = {
    measures,
    troubleCodes,
    bank: data.bank,
    rearFastSwingV: rear ? rear.high - rear.low : null,
    deadGain: deadGain(data),
    wideband: data.upstream?.channel.role === 'upstreamLambda',
  };
  const reasons: Reason[] = [];
  for (const rule of REASON_RULES) {
    const said = rule.weigh(evidence);
    if (!said) continue;
    reasons.push(signedReason(rule.id, said.weight, said.detail));
  }
  return reasons.sort((a, b) => b.weight - a.weight);
}

function decide(
  window: CaptureWindow,
  reasons: readonly Reason[],
  blockers: readonly Blocker[],
): Pick<WindowScore, 'finding' | 'probabilityNotStoring'> {
  const direct = reasons.some(({ id }) => id !== 'catalystCode');
  if (!direct || !JUDGED.includes(window.kind)) return { finding: 'cannotTell', probabilityNotStoring: null };
  const probability = probabilityOf(logOddsOf(reasons));
  return { finding: findingOf(probability, blockers.length > 0), probabilityNotStoring: probability };
}
