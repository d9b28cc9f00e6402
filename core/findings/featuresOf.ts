import type { Capture } from '../capture/capture.ts';
import type { Bank } from '../capture/roles.ts';
import { suggestWindows } from '../windows/suggestWindows.ts';
import { pool } from './evidence.ts';
import { REASON_RULES } from './reasons/index.ts';
import { judgeForBanks } from './scoreWindow.ts';
import { standingBlockers } from './standingBlockers.ts';

/**
 * What each reason sees in a capture for one bank, by the way a verdict takes: suggested windows, those that are usable,
 * pooled. What the lines of the additive model are fitted to. Reasons that see nothing are missing.
 */
export function featuresOf(capture: Capture, bank: Bank, troubleCodes: readonly string[]): Record<string, number> {
  const judged = suggestWindows(capture).flatMap((window) => judgeForBanks(capture, window, troubleCodes));
  const { used } = standingBlockers(judged.filter(({ score }) => score.bank === bank));
  const evidence = pool(
    used.map((window) => window.evidence),
    bank,
    troubleCodes,
  );
  const features: Record<string, number> = {};
  for (const rule of REASON_RULES) {
    const seen = rule.look(evidence);
    if (seen) features[rule.id] = seen.value;
  }
  return features;
}
