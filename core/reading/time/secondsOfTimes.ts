import type { TimePlan } from './timePlan.ts';
import { type ClockTurn, DAY, HOUR } from './unwrapClock.ts';

/** Changes numbers of a time column into seconds, in place: each n becomes n * times / over, rounded once where times is 1. */
export function secondsOfTimes(raw: Float64Array, plan: TimePlan): void {
  if (plan.kind !== 'number' || (plan.times === 1 && plan.over === 1)) return;
  const { times, over } = plan;
  for (let i = 0; i < raw.length; i++) raw[i] = ((raw[i] ?? 0) * times) / over;
}

/** How times of this plan, s, begin again: times of day at midnight, minutes and seconds that all lie in one hour there. */
export function turnOf(plan: TimePlan, timesS: Float64Array): ClockTurn | null {
  if (plan.kind !== 'text') return null;
  if (plan.form.kind === 'clock') return DAY;
  return plan.form.id === 'minutesSeconds' && !timesS.some((timeS) => timeS >= HOUR.lengthS) ? HOUR : null;
}
