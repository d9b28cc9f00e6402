import { clockOfDay } from './clockOfDay.ts';
import { dayOf } from './localDate.ts';
import type { TimeForm } from './timeForm.ts';

/** A day and a time of day in one cell, where the day is not written year first. */
export const localInstant: TimeForm = {
  id: 'localInstant',
  words: 'dates with times',
  kind: 'instant',
  examples: [
    ['29.02.2024 23:59:59,123', 1709251199.123],
    ['2/29/2024 11:59:59.5 PM', 1709251199.5],
    ['29-Feb-2024 23:59:59', 1709251199],
    ['Feb 29, 2024 11:59:59 PM', 1709251199],
  ],
  parse(text) {
    const split = /^(.{6,20}?)[\sT,]+(\d{1,2}:\d{2}(?::.*)?)$/.exec(text.trim());
    if (split?.[1] === undefined || split[2] === undefined) return Number.NaN;
    const clock = /^\d{1,2}:\d{2}$/.test(split[2]) ? `${split[2]}:00` : split[2];
    const seconds = clockOfDay.parse(clock);
    const day = dayOf(split[1]);
    // Ticks of a microsecond: finer ones do not fit beside the seconds since 1970.
    return Math.round((day * 86400 + Math.floor(seconds)) * 1e6 + (seconds - Math.floor(seconds)) * 1e6) / 1e6;
  },
};
