import { frontVoltage, rangeOf, rearVoltage } from '../measures/sensors.ts';
import { slowAndFast, swingOf } from '../measures/slowAndFast.ts';
import { type SwitchOrder, switchOrder } from '../measures/switchOrder.ts';
import type { Seconds } from '../units/quantities.ts';
import { round } from '../words/numbers.ts';
import { banksRunApart, followsOtherBank } from './banksExchanged.ts';
import { codesOf } from './codeGroups.ts';
import type { Condition, ConditionContext } from './condition.ts';
import { met, notMet, notRecorded } from './conditionResult.ts';

/**
 * A rear sensor that swings this much more than the front one is probably the front one: of two sound sensors one may
 * swing from 0.2 to 0.8 V and the other from 0.05 to 0.88 V (common practice, no source).
 */
const LARGER = 1.4;
const LEAST_REAR_V = 0.3;
/**
 * The longest a rear trace can follow the front one and be as large: gas takes a quarter of a second at most at a raised
 * speed (4 L of pipe and brick, 0.45 g/L, 7 g/s), and what a brick stores or a sensor lags makes a wave smaller before
 * it makes it later by more than a quarter of its period (a first-order lag: gain cos φ).
 */
const GAS_S = 0.25;
const LAG_PERIODS = 0.25;
const AS_LARGE = 0.85;

/** Signs that a trace is not of the sensor it is said to be of: between front and rear, or between the banks. */
export const sensorsInPlace: Condition = {
  id: 'sensorsInPlace',
  words: 'Sensors not exchanged',
  help: 'Behind a converter a wave can only become smaller and later. A rear trace that swings more than the front one, or ahead of it, means exchanged connectors, channels or leads; so do two banks of which one runs to the rich end and the other to the lean end, or a rear trace that follows the front one of the other bank.',
  blocker: 'sensorsExchanged',
  kinds: ['hold', 'cruise', 'mixed'],
  judge(context) {
    const [code] = codesOf(context.troubleCodes, 'exchanged');
    if (code) return notMet(this.id, `Trouble code ${code}: sensor signals exchanged between banks.`);
    const signs = [banksRunApart, followsOtherBank, swingsMore, switchesFirst]
      .map((sign) => sign(context))
      .filter((sign) => sign !== null);
    if (signs.length > 0) return notMet(this.id, signs.join(' '));
    if (!frontVoltage(context).sensor || !rearVoltage(context).sensor)
      return notRecorded(this.id, 'It takes both sensors as voltages to tell.');
    return met(this.id, 'The rear trace neither swings more than the front one nor switches before it.');
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

/**
 * A trace that switches before another of its size, or so long after that nothing behind a converter could: the control
 * then swings by the sensor behind, which is slow, and what is called the rear trace leads.
 */
function switchesFirst(context: ConditionContext): string | null {
  const front = frontVoltage(context).sensor;
  const rear = rearVoltage(context).sensor;
  const order = switchOrder(context);
  if (!front || !rear || !order || swingOf(rangeOf(rear)) < AS_LARGE * swingOf(rangeOf(front))) return null;
  const { aheadS, behindS, stepS } = order;
  if (!isFirm(order) || behindS <= latestEcho(order) || aheadS <= stepS) return null;
  return `The rear trace, no smaller, switches ${round(aheadS, 2)} s before the front one; as its echo it would come ${round(behindS, 2)} s late, later than gas and sensor take.`;
}

/** Whether the traces keep to one order from switch to switch. */
function isFirm({ spreadS, periodS }: SwitchOrder): boolean {
  return spreadS <= periodS / 4;
}

/** The longest time by which a rear trace as large as the front one can follow it. */
function latestEcho({ periodS, stepS }: SwitchOrder): Seconds {
  return GAS_S + LAG_PERIODS * periodS + stepS;
}
