import { median } from '../statistics/quantile.ts';
import { engineTrack, trackedBetween } from '../windows/engineTrack.ts';
import { round } from '../words/numbers.ts';
import type { Condition } from './condition.ts';
import { met, notMet, notRecorded } from './conditionResult.ts';

/** The lowest engine speed at which the two makers' monitors in print run (check 3.09: 1090 and 1720 1/min). */
const LEAST_RPM = 1200;
const MOST_RPM = 3500;

export const speedRaised: Condition = {
  id: 'speedRaised',
  words: 'Engine speed raised',
  help: 'At idle little gas flows and a converter may cool down; a converter is judged at 2000 to 2500 1/min or in a steady cruise.',
  blocker: 'idleOnly',
  kinds: ['hold', 'cruise', 'idle', 'mixed'],
  judge({ capture, window }) {
    const rpms = trackedBetween(engineTrack(capture), 'rpm', window.startS, window.endS);
    if (rpms.length === 0) return notRecorded(this.id, 'Engine speed was not recorded.');
    const middle = median(rpms);
    const detail = `${round(middle, 0)} 1/min in the middle.`;
    if (middle < LEAST_RPM) return notMet(this.id, `${detail} Idle is a second look, not a test.`);
    return middle > MOST_RPM ? notMet(this.id, `${detail} Above ${MOST_RPM} 1/min.`) : met(this.id, detail);
  },
};
