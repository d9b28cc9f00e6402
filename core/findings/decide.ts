import type { Grams, Share } from '../units/quantities.ts';
import { CALIBRATION } from './calibration.ts';
import { restOnSensors } from './drawReasons.ts';
import type { Blocker, Finding, Reason } from './finding.ts';
import { probabilityOf } from './probability.ts';
import { logOddsOf } from './signedReason.ts';

/** A finding and how likely it is that the converter does not store. */
export interface Decision {
  readonly finding: Finding;
  readonly probabilityNotStoring: Share | null;
}

/** Exchanged sensors tell the opposite of what they say: a number beside this blocker would mislead. */
const VOIDING = 'sensorsExchanged';
/** A rear sensor that may be dead rests as calmly as behind a good converter: so far the odds go back to what is usual. */
const DOUBTING = 'rearNotProven';

/** 95 % interval of the fitted capacity for two litres, null at an open end; null where nothing could be fitted. */
type FittedRange = readonly [Grams | null, Grams | null] | null;

/**
 * Weighs the reasons: the probability is the sum of their weights as odds, null where they do not rest on the sensors or
 * a blocker takes their meaning away. It lies nearer to what is known without any capture behind a rear sensor that may be
 * dead, and while the fitted storage leaves the other answer open. The finding is cannotTell while any blocker stands,
 * whatever the probability.
 */
export function decide(reasons: readonly Reason[], blockers: readonly Blocker[], fitted: FittedRange): Decision {
  if (!restOnSensors(reasons) || blockers.some(({ id }) => id === VOIDING))
    return { finding: 'cannotTell', probabilityNotStoring: null };
  const { rearDeadShare, leftOpen } = CALIBRATION.decided;
  const seen = probabilityOf(logOddsOf(reasons));
  const ofFit = leavesOpen(fitted, seen) ? leftOpen.share : 0;
  const share = blockers.some(({ id }) => id === DOUBTING) ? Math.max(rearDeadShare, ofFit) : ofFit;
  const probability = doubted(seen, share);
  return { finding: blockers.length > 0 ? 'cannotTell' : findingAt(probability), probabilityNotStoring: probability };
}

/** Whether the fit leaves open that the converter passes, where the reasons condemn it; or that it fails, where they clear it. */
function leavesOpen(fitted: FittedRange, probability: Share): boolean {
  if (!fitted) return false;
  const { beforeAnyTest, leftOpen } = CALIBRATION.decided;
  const [low, high] = fitted;
  if (probability > beforeAnyTest) return high === null || high > leftOpen.passesFromG;
  return low === null || low < leftOpen.failsUpToG;
}

/** Part of the way back to what is known without any capture. */
function doubted(probability: Share, share: Share): Share {
  return probability + share * (CALIBRATION.decided.beforeAnyTest - probability);
}

function findingAt(probability: Share): Finding {
  const { notStoringFrom, storingUpTo } = CALIBRATION.decided;
  if (probability >= notStoringFrom) return 'notStoring';
  return probability <= storingUpTo ? 'storing' : 'weak';
}
