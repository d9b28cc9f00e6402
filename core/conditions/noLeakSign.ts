import { lagSearch } from '../measures/lagSearch.ts';
import type { SensorSeries } from '../measures/measure.ts';
import { frontVoltage, rangeOf, rearVoltage, richShare } from '../measures/sensors.ts';
import { slowAndFast, swingOf } from '../measures/slowAndFast.ts';
import { hysteresisCrossings } from '../signal/crossings.ts';
import type { Hertz } from '../units/quantities.ts';
import { percent, round } from '../words/numbers.ts';
import type { Condition, ConditionContext } from './condition.ts';
import { met, notMet, notRecorded } from './conditionResult.ts';
import { idleLevels } from './idleLevels.ts';
import { trimsOf } from './trimsOf.ts';

/**
 * A rear sensor that rests this lean at a raised speed, under a balanced mixture, breathes air; one that rests a little
 * higher does, if the control enriches against it: the front sensor is then rich for most of the time.
 */
const LEAN_REAR_V = 0.2;
const LEANISH_REAR_V = 0.3;
const BALANCED_SHARE = 0.33;
const ENRICHED_SHARE = 0.58;
/** Air enters most at idle: where the rear sensor rests this rich there, no leak is what keeps it lean at speed. */
const RICH_IDLE_V = 0.55;
/** Lambda within this of 1 is balanced. */
const BALANCED_LAMBDA = 0.02;
/** A leak shows most at idle: there the rear sensor rests this lean while the front one does not. */
const LEAN_IDLE_V = 0.2;
const IDLE_FRONT_V = 0.4;
/** At speed it then rests no higher than this; where it is nearly in air at idle, no higher than that. */
const LOW_REAR_V = 0.5;
const IN_AIR_V = 0.14;
const USUAL_REAR_V = 0.62;
/**
 * Trims add this much more fuel at idle than at a raised speed, where false air is a smaller share. By some per cent they
 * differ on any car: purge, and what the injectors need to open (common practice, no source).
 */
const IDLE_TRIM = 4;
/** Fast movement behind, of this size and this little alike to the front's, has a cause of its own. */
const OWN_SWING_V = 0.25;
const UNLIKE = 0.3;
/** The pulses of a leak come at least this often; the control's own trim by the rear sensor goes back and forth more slowly. */
const OWN_HZ = 0.4;

/** Signs of air that enters the exhaust, or the intake, where no sensor expects it (common practice, no source). */
export const noLeakSign: Condition = {
  id: 'noLeakSign',
  words: 'No sign of a leak',
  help: 'Air that enters between engine and rear sensor makes that sensor read lean whatever the converter does. It shows as a rear voltage that rests low, most at idle; as trims that add more fuel at idle; as movement behind that does not follow the front.',
  blocker: 'leak',
  kinds: ['hold', 'cruise', 'mixed'],
  judge(context) {
    const rear = rearVoltage(context).sensor;
    if (!rear) return notRecorded(this.id, 'It takes the rear sensor as a voltage to tell.');
    const signs = [leanAtSpeed, leanAtIdle, moreFuelAtIdle, movesAlone].map((sign) => sign(context));
    const found = signs.filter((sign) => sign !== null);
    if (found.length > 0) return notMet(this.id, found.join(' '));
    return met(this.id, `The rear sensor rests at ${round(rangeOf(rear).middle, 2)} V; nothing points to a leak.`);
  },
};

function leanAtSpeed(context: ConditionContext): string | null {
  const rear = rearVoltage(context).sensor;
  if (!rear || !context.upstream || (idleLevels(context).rearHighestV ?? 0) >= RICH_IDLE_V) return null;
  const { middle } = rangeOf(rear);
  if (context.upstream.channel.role === 'upstreamLambda') {
    const lambda = rangeOf(context.upstream).middle;
    if (middle >= LEAN_REAR_V || Math.abs(lambda - 1) > BALANCED_LAMBDA) return null;
    return `The rear sensor rests at ${round(middle, 2)} V while lambda in front is ${round(lambda, 3)}.`;
  }
  const front = frontVoltage(context).sensor;
  const rich = front ? richShare(front) : 0;
  const lean = middle < LEAN_REAR_V && rich >= BALANCED_SHARE;
  const against = middle < LEANISH_REAR_V && rich >= ENRICHED_SHARE;
  if (!lean && !against) return null;
  return `The rear sensor rests at ${round(middle, 2)} V while the front one is rich for ${percent(rich)} of the time.`;
}

function leanAtIdle(context: ConditionContext): string | null {
  const { frontV, rearV } = idleLevels(context);
  const rear = rearVoltage(context).sensor;
  if (!rear || rearV === null || rearV >= LEAN_IDLE_V || (frontV !== null && frontV < IDLE_FRONT_V)) return null;
  // Behind a converter that is still full from a coast-down the rear sensor is lean at idle too; a leak shows at speed as well.
  if (rangeOf(rear).middle > (rearV < IN_AIR_V ? USUAL_REAR_V : LOW_REAR_V)) return null;
  return `At idle the rear sensor rests at ${round(rearV, 2)} V: air may enter ahead of it.`;
}

function moreFuelAtIdle(context: ConditionContext): string | null {
  const { trims } = idleLevels(context);
  const { short, long } = trimsOf(context.capture, context.bank, context.window);
  if (trims === null || (short === null && long === null)) return null;
  const more = trims - (short ?? 0) - (long ?? 0);
  if (more < IDLE_TRIM) return null;
  return `The trims add ${round(more, 1)} % more fuel at idle than at this speed: air may enter ahead of the front sensor or into the intake.`;
}

function movesAlone(context: ConditionContext): string | null {
  const rear = rearVoltage(context).sensor;
  const found = lagSearch(context);
  if (!rear || !found) return null;
  const swing = swingOf(slowAndFast(rear).fast);
  if (swing < OWN_SWING_V || found.alike >= UNLIKE || ownHz(rear) < OWN_HZ) return null;
  return `The rear sensor moves by ${round(swing, 2)} V without following the front one (correlation ${round(found.alike, 2)}).`;
}

/** How often a second the fast part of a rear sensor goes from one side to the other and back. */
function ownHz(rear: SensorSeries): Hertz {
  const { fast, fastPart } = slowAndFast(rear);
  const quarter = swingOf(fast) / 4;
  const { timesS } = fastPart;
  const spanS = (timesS[timesS.length - 1] ?? 0) - (timesS[0] ?? 0);
  const band = { low: fast.middle - quarter, high: fast.middle + quarter };
  return spanS > 0 ? hysteresisCrossings(fastPart, band).length / 2 / spanS : 0;
}
