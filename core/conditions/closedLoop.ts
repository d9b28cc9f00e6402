import { findChannel } from '../capture/capture.ts';
import { seriesOf } from '../capture/series.ts';
import { engineTrack, trackedBetween, wholeEngineChannel } from '../windows/engineTrack.ts';
import { loopOf } from '../windows/fuelStatusCode.ts';
import { percent } from '../words/numbers.ts';
import type { Condition, ConditionContext } from './condition.ts';
import { met, notMet, notRecorded } from './conditionResult.ts';

/** A few seconds of open loop spoil a count (common practice, no source). */
const LEAST_CLOSED = 0.97;

export const closedLoop: Condition = {
  id: 'closedLoop',
  words: 'Closed loop',
  help: 'Only under closed loop does the front sensor steer the mixture back and forth, and only then can the two sensors be compared.',
  blocker: 'openLoop',
  kinds: ['hold', 'cruise', 'idle', 'mixed'],
  judge(context) {
    const statuses = statusesIn(context);
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

/** The bank's own loop where that is recorded beside the engine's, which is mostly that of both. */
function statusesIn({ capture, window, bank }: ConditionContext): ArrayLike<number> & Iterable<number> {
  const own = bank === null ? null : findChannel(capture, 'fuelStatus', bank);
  const values =
    own && own !== wholeEngineChannel(capture, 'fuelStatus') ? seriesOf(own, window.startS, window.endS).values : [];
  return values.length > 0 ? values : trackedBetween(engineTrack(capture), 'fuelStatus', window.startS, window.endS);
}
