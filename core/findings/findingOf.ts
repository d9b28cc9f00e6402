import type { Share } from '../units/quantities.ts';
import { CALIBRATION } from './calibration.ts';
import type { Finding } from './finding.ts';

/** The finding at a probability: never any but cannotTell while a blocker stands. */
export function findingOf(probabilityNotStoring: Share, blocked: boolean): Finding {
  const { notStoringFrom, storingUpTo } = CALIBRATION.decided;
  if (blocked) return 'cannotTell';
  if (probabilityNotStoring >= notStoringFrom) return 'notStoring';
  return probabilityNotStoring <= storingUpTo ? 'storing' : 'weak';
}
