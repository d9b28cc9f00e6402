import type { Share } from '../units/quantities.ts';
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

/**
 * Weighs the reasons: the probability is the sum of their weights as odds, null where they do not rest on the sensors or
 * a blocker takes their meaning away; behind a rear sensor that may be dead it lies nearer to what is known without any
 * capture. The finding is cannotTell while any blocker stands, whatever the probability.
 */
export function decide(reasons: readonly Reason[], blockers: readonly Blocker[]): Decision {
  if (!restOnSensors(reasons) || blockers.some(({ id }) => id === VOIDING))
    return { finding: 'cannotTell', probabilityNotStoring: null };
  const seen = probabilityOf(logOddsOf(reasons));
  const probability = blockers.some(({ id }) => id === DOUBTING) ? doubted(seen) : seen;
  return { finding: blockers.length > 0 ? 'cannotTell' : findingAt(probability), probabilityNotStoring: probability };
}

function doubted(probability: Share): Share {
  const { rearDeadShare, beforeAnyTest } = CALIBRATION.decided;
  return probability + rearDeadShare * (beforeAnyTest - probability);
}

function findingAt(probability: Share): Finding {
  const { notStoringFrom, storingUpTo } = CALIBRATION.decided;
  if (probability >= notStoringFrom) return 'notStoring';
  return probability <= storingUpTo ? 'storing' : 'weak';
}
