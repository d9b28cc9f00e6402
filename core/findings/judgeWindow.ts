import type { Capture } from '../capture/capture.ts';
import type { Bank } from '../capture/roles.ts';
import type { ConditionContext, ConditionResult } from '../conditions/condition.ts';
import { CONDITIONS } from '../conditions/index.ts';
import { MEASURES } from '../measures/index.ts';
import { cutWindow } from '../measures/windowData.ts';
import type { CaptureWindow } from '../windows/window.ts';
import { blockersOf } from './blockersOf.ts';
import { type DecisionCosts, USUAL_COSTS } from './costs.ts';
import { decide } from './decide.ts';
import { drawReasons } from './drawReasons.ts';
import { evidenceOf, pool, type WindowEvidence } from './evidence.ts';
import type { WindowScore } from './finding.ts';
import { rankTests } from './nextTests/rankTests.ts';

/** A window's score with the evidence behind it, from which a bank's verdict is made. */
export interface JudgedWindow {
  readonly score: WindowScore;
  readonly evidence: WindowEvidence;
}

/**
 * Judges one window for one bank: conditions and measures first, then reasons and blockers, then the finding. Never
 * throws for any capture or stretch. `troubleCodes` in upper case.
 */
export function judgeWindow(
  capture: Capture,
  window: CaptureWindow,
  bank: Bank,
  troubleCodes: readonly string[],
  costs: DecisionCosts = USUAL_COSTS,
): JudgedWindow {
  const data = cutWindow(capture, window, bank);
  const measures = MEASURES.map((measure) => measure.compute(data));
  const byId = new Map(measures.map((value) => [value.id, value]));
  const conditions = judgeConditions({ ...data, measures: byId, troubleCodes });
  const blockers = blockersOf(data, conditions);
  const evidence = evidenceOf(data, byId);
  const pooled = pool([evidence], bank, troubleCodes);
  const reasons = drawReasons(pooled);
  const verdict = decide(reasons, blockers, pooled.fit()?.intervalFor2L ?? null);
  const nextTests = rankTests({ ...verdict, blockers, reasons, conditions }, costs);
  return { score: { ...window, bank, conditions, measures, ...verdict, reasons, blockers, nextTests }, evidence };
}

function judgeConditions(context: ConditionContext): ConditionResult[] {
  const asked = CONDITIONS.filter(({ kinds }) => kinds === 'all' || kinds.includes(context.window.kind));
  return asked.map((condition) => condition.judge(context));
}
