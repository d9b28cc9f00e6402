import { lagSearch } from '../measures/lagSearch.ts';
import { frontVoltage, rearVoltage, richShare } from '../measures/sensors.ts';
import { slowAndFast, swingOf } from '../measures/slowAndFast.ts';
import { cutWindow } from '../measures/windowData.ts';
import { round } from '../words/numbers.ts';
import { codesOf } from './codeGroups.ts';
import type { Condition, ConditionContext } from './condition.ts';
import { met, notMet, notRecorded } from './conditionResult.ts';
import { trimsOf } from './trimsOf.ts';

/** A rear sensor that swings this much more than the front one is probably the front one. */
const LARGER = 1.6;
const LEAST_REAR_V = 0.3;
/** A rear trace this far ahead, and this much alike, is the front one. */
const AHEAD_S = -0.06;
const ALIKE = 0.5;
const FULL = 0.8;
/** An accusation needs more certainty than a number. */
const MOST_DOUBT = 0.003;
/** Two banks whose trims run away from each other are steered by each other's sensors. */
const APART = 30;

/** Signs that a trace is not of the sensor it is said to be of: between front and rear, or between the banks. */
export const sensorsInPlace: Condition = {
  id: 'sensorsInPlace',
  words: 'Sensors not exchanged',
  help: 'Behind a converter a wave can only become smaller and later. A rear trace that swings more than the front one, or ahead of it, means exchanged connectors, channels or leads; so do two banks of which one runs to the rich end and the other to the lean end.',
  blocker: 'sensorsExchanged',
  kinds: ['hold', 'cruise', 'mixed'],
  judge(context) {
    const [code] = codesOf(context.troubleCodes, 'exchanged');
    if (code) return notMet(this.id, `Trouble code ${code}: sensor signals exchanged between banks.`);
    const signs = [banksRunApart, swingsMore, runsAhead].map((sign) => sign(context)).filter((sign) => sign !== null);
    if (signs.length > 0) return notMet(this.id, signs.join(' '));
    if (!frontVoltage(context).sensor || !rearVoltage(context).sensor)
      return notRecorded(this.id, 'It takes both sensors as voltages to tell.');
    return met(this.id, 'The rear trace neither swings more than the front one nor runs ahead of it.');
  },
};

function swingsMore(context: ConditionContext): string | null {
  const front = frontVoltage(context).sensor;
  const rear = rearVoltage(context).sensor;
  if (!front || !rear) return null;
  const ahead = swingOf(slowAndFast(front).fast);
  const behind = swingOf(slowAndFast(rear).fast);
  if (behind <= LEAST_REAR_V || behind <= LARGER * ahead) return null;
  return `Without slow wander the rear trace swings by ${round(behind, 2)} V, the front one by only ${round(ahead, 2)} V.`;
}

function runsAhead(context: ConditionContext): string | null {
  const front = frontVoltage(context).sensor;
  const rear = rearVoltage(context).sensor;
  const found = lagSearch(context);
  // The true front sensor, under the rear one's name, swings as far as the other at least.
  if (!front || !rear || swingOf(slowAndFast(rear).fast) < FULL * swingOf(slowAndFast(front).fast)) return null;
  if (!found || found.lagS > AHEAD_S || found.alike < ALIKE || found.doubt > MOST_DOUBT) return null;
  return `The rear trace runs ${round(-found.lagS, 2)} s ahead of the front one.`;
}

function banksRunApart(context: ConditionContext): string | null {
  const { bank, capture, window } = context;
  if (bank === null) return null;
  const other = bank === 1 ? 2 : 1;
  const own = trimsOf(capture, bank, window);
  const theirs = trimsOf(capture, other, window);
  const ours = (own.short ?? 0) + (own.long ?? 0);
  const others = (theirs.short ?? 0) + (theirs.long ?? 0);
  if (ours * others < 0 && Math.abs(ours - others) > APART)
    return `The trims run apart: ${round(ours, 0)} % here, ${round(others, 0)} % on the other bank.`;
  const front = frontVoltage(context).sensor;
  const otherFront = frontVoltage(cutWindow(capture, { ...window, bank: other }, other)).sensor;
  if (!front || !otherFront) return null;
  const [here, there] = [richShare(front), richShare(otherFront)];
  if (Math.max(here, there) < 0.9 || Math.min(here, there) > 0.1) return null;
  return 'One bank stays at the rich end, the other at the lean end.';
}
