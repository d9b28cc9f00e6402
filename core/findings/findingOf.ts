import type { Share } from '../units/quantities.ts';
import { NOT_STORING_FROM, STORING_UP_TO } from './calibration.ts';
import type { Finding } from './finding.ts';

/** The finding at a probability: never any but cannotTell while a blocker stands. */
export function findingOf(probabilityNotStoring: Share, blocked: boolean): Finding {
  if (blocked) return 'cannotTell';
  if (probabilityNotStoring >= NOT_STORING_FROM) return 'notStoring';
  return probabilityNotStoring <= STORING_UP_TO ? 'storing' : 'weak';
}
