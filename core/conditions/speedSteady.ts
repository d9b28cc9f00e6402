import { robustRange } from '../statistics/quantile.ts';
import { engineTrack, trackedBetween } from '../windows/engineTrack.ts';
import { span } from '../words/numbers.ts';
import type { Condition } from './condition.ts';
import { met, notMet, notRecorded } from './conditionResult.ts';

/**
 * From lowest to highest: 100 to 200 1/min to either side are asked of a hold, on the road a tenth of the speed (common
 * practice, no source).
 */
const WITHIN_RPM = 400;
const WITHIN_SHARE = 0.2;

export const speedSteady: Condition = {
  id: 'speedSteady',
  words: 'Engine speed steady',
  help: 'A change of speed changes the mixture for a moment, and the rear sensor with it.',
  blocker: 'unsteadySpeed',
  kinds: ['hold', 'cruise', 'idle', 'mixed'],
  judge({ capture, window }) {
    const rpms = trackedBetween(engineTrack(capture), 'rpm', window.startS, window.endS);
    if (rpms.length === 0) return notRecorded(this.id, 'Engine speed was not recorded.');
    const { low, high, middle } = robustRange(rpms);
    const room = Math.max(WITHIN_RPM, WITHIN_SHARE * middle);
    const detail = `${span(low, high, 0, '1/min')}.`;
    return high - low <= room ? met(this.id, detail) : notMet(this.id, `${detail} Hold it steadier.`);
  },
};
