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

/**
 * Blockers that take the meaning out of the traces: a sensor that may be dead rests as calmly as behind a good converter,
 * and exchanged sensors tell the opposite of what they say. A number beside them would mislead.
 */
const VOIDING = new Set(['rearNotProven', 'sensorsExchanged']);

/**
 * Weighs the reasons: the probability is the sum of their weights as odds, null where they do not rest on the sensors or
 * a blocker takes their meaning away. The finding is cannotTell while any blocker stands, whatever the probability.
 */
export function decide(reasons: readonly Reason[], blockers: readonly Blocker[]): Decision {
  if (!restOnSensors(reasons) || blockers.some(({ id }) => VOIDING.has(id)))
    return { finding: 'cannotTell', probabilityNotStoring: null };
  const probability = probabilityOf(logOddsOf(reasons));
  return { finding: blockers.length > 0 ? 'cannotTell' : findingAt(probability), probabilityNotStoring: probability };
}

function findingAt(probability: Share): Finding {
  const { notStoringFrom, storingUpTo } = CALIBRATION.decided;
  if (probability >= notStoringFrom) return 'notStoring';
  return probability <= storingUpTo ? 'storing' : 'weak';
}
