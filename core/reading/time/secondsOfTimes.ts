import type { TimePlan } from './timePlan.ts';

/** Changes numbers of a time column into seconds, in place: each n becomes n * times / over, rounded once where times is 1. */
export function secondsOfTimes(raw: Float64Array, plan: TimePlan): void {
  if (plan.kind !== 'number' || (plan.times === 1 && plan.over === 1)) return;
  const { times, over } = plan;
  for (let i = 0; i < raw.length; i++) raw[i] = ((raw[i] ?? 0) * times) / over;
}

/** Whether times of this plan are of the day and start again at midnight. */
export function passesMidnight(plan: TimePlan): boolean {
  return plan.kind === 'text' && plan.form.kind === 'clock';
}
