import type { Condition } from './condition.ts';
import { met, notRecorded } from './conditionResult.ts';

export const readinessKnown: Condition = {
  id: 'readinessKnown',
  words: 'No open readiness question',
  help: 'Whether the monitors have finished since codes were last cleared. Read it before clearing anything: a car whose codes were cleared yesterday hides what it had. Without codes and readiness the finding rests on the traces alone.',
  blocker: null,
  kinds: 'all',
  judge({ troubleCodes }) {
    return troubleCodes.length > 0
      ? met(this.id, 'Codes are stored, so they have not just been cleared.')
      : notRecorded(this.id, 'Readiness was not recorded with the vehicle.');
  },
};
