import type { WindowData } from '../measures/measure.ts';
import { frontVoltage, rangeOf, rearVoltage } from '../measures/sensors.ts';
import { slowAndFast } from '../measures/slowAndFast.ts';
import { cutWindow } from '../measures/windowData.ts';
import { suggestWindows } from '../windows/suggestWindows.ts';
import { percent, round } from '../words/numbers.ts';
import type { Condition } from './condition.ts';
import { met, notMet, notRecorded } from './conditionResult.ts';
import { followsFront } from './rearWithoutFront.ts';

/** A rear sensor that rests this lean behind a front sensor that is rich a third of the time breathes air. */
const LEAN_REAR_V = 0.25;
const RICH_FRONT_SHARE = 0.33;
/** A leak shows most at idle: the rear level there is lower by this much, and dips this low. */
const LOWER_AT_IDLE_V = 0.08;
const DIP_V = 0.15;
const LEAN_IDLE_V = 0.36;
/** Fast movement behind, of this size and this little alike to the front's, has a cause of its own. */
const OWN_SWING_V = 0.22;
const UNLIKE = 0.35;

export const noLeakSign: Condition = {
  id: 'noLeakSign',
  words: 'No sign of a leak',
  help: 'Air that enters between engine and rear sensor makes that sensor read lean whatever the converter does. It shows as a rear voltage that rests low or dips, most at idle, and as movement behind that does not follow the front.',
  blocker: 'leak',
  kinds: ['hold', 'cruise', 'mixed'],
  judge(context) {
    const front = frontVoltage(context).sensor;
    const rear = rearVoltage(context).sensor;
    if (!front || !rear) return notRecorded(this.id, 'It takes both sensors as voltages to tell.');
    const { values } = front.series;
    const rich = values.filter((value) => value > 0.45).length / values.length;
    const { low, middle, high } = rangeOf(rear);
    if (middle < LEAN_REAR_V && high < 0.55 && low < DIP_V && rich > RICH_FRONT_SHARE)
      return notMet(
        this.id,
        `The rear sensor rests at ${round(middle, 2)} V while the front one is rich for ${percent(rich)} of the time.`,
      );
    const atIdle = leanAtIdle(context, middle);
    if (atIdle) return notMet(this.id, atIdle);
    const { fast } = slowAndFast(rear);
    const alike = followsFront(context);
    if (alike !== null && alike < UNLIKE && fast.high - fast.low > OWN_SWING_V)
      return notMet(
        this.id,
        `The rear sensor moves by ${round(fast.high - fast.low, 2)} V without following the front one (correlation ${round(alike, 2)}).`,
      );
    return met(
      this.id,
      `The rear sensor rests at ${round(middle, 2)} V; its movement has no cause of its own that shows.`,
    );
  },
};

/** A sentence where an idle of the same capture shows the rear sensor leaner and dipping; null otherwise. */
function leanAtIdle({ capture, bank }: WindowData, restsV: number): string | null {
  for (const idle of suggestWindows(capture)) {
    if (idle.kind !== 'idle') continue;
    const data = cutWindow(capture, idle, bank);
    const rear = rearVoltage(data).sensor;
    const front = frontVoltage(data).sensor;
    if (!rear || !front) continue;
    const { low, middle } = rangeOf(rear);
    const ahead = rangeOf(front);
    if (
      middle < restsV - LOWER_AT_IDLE_V &&
      middle < LEAN_IDLE_V &&
      low < DIP_V &&
      middle < ahead.middle - LOWER_AT_IDLE_V
    )
      return `At idle the rear sensor rests at ${round(middle, 2)} V and dips to ${round(low, 2)} V, at raised speed at ${round(restsV, 2)} V: air may enter ahead of it.`;
  }
  return null;
}
