import { engineTrack, trackedBetween } from '../windows/engineTrack.ts';
import { loopOf } from '../windows/fuelStatusCode.ts';
import { percent } from '../words/numbers.ts';
import type { Condition } from './condition.ts';
import { met, notMet, notRecorded } from './conditionResult.ts';

/** A few seconds of open loop spoil a count (common practice, no source). */
const LEAST_CLOSED = 0.97;

export const closedLoop: Condition = {
  id: 'closedLoop',
  words: 'Closed loop',
  help: 'Only under closed loop does the front sensor steer the mixture back and forth, and only then can the two sensors be compared.',
  blocker: 'openLoop',
  kinds: ['hold', 'cruise', 'idle', 'mixed'],
  judge({ capture, window }) {
    const statuses = trackedBetween(engineTrack(capture), 'fuelStatus', window.startS, window.endS);
    if (statuses.length === 0) return notRecorded(this.id, 'Fuel system status was not recorded.');
    let closed = 0;
    let fault = false;
    for (const status of statuses) {
      const loop = loopOf(status);
      if (loop === 'closed') closed++;
      if (loop === 'openByFault' || loop === 'closedWithFault') fault = true;
    }
    const share = closed / statuses.length;
    if (fault) return notMet(this.id, 'The fuel system reports a fault of a sensor or of itself.');
    if (share >= LEAST_CLOSED) return met(this.id, `Closed loop in ${percent(share)} of the window.`);
    return notMet(this.id, `Closed loop in only ${percent(share)} of the window.`);
  },
};
