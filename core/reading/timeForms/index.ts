// Every way of writing time as text, the narrower before the wider. A new one is a file and a line here;
// test/unit/core/reading/everyTimeForm.test.ts runs its examples.

import { registry } from '../../registry.ts';
import { clockOfDay } from './clockOfDay.ts';
import { isoInstant } from './isoInstant.ts';
import { localDate } from './localDate.ts';
import { localInstant } from './localInstant.ts';
import { minutesSeconds } from './minutesSeconds.ts';
import type { TimeForm } from './timeForm.ts';
import { timeSpan } from './timeSpan.ts';

export const TIME_FORMS: readonly TimeForm[] = registry('time forms', ({ id }) => id, [
  isoInstant,
  localInstant,
  localDate,
  clockOfDay,
  minutesSeconds,
  timeSpan,
]);

/** A colon between digits, two date separators, a month by name, the basic form of ISO 8601, or its lengths of time. */
const COULD_BE_TIME =
  /\d:\d\d|\d[-/.]\d{1,2}[-/.]\d|\d[-\s.]+[A-Za-zäéû]{3,}[-\s.]+\d|[A-Za-z]{3,}\.? \d{1,2},? \d{4}|^\d{8}[Tt_ ]\d{6}|^P[\dDT]/;

/** The first form that reads `text`, or null. Cheap for what cannot be a time. */
export function timeFormOf(text: string): TimeForm | null {
  if (text.length < 4 || text.length > 40 || !COULD_BE_TIME.test(text)) return null;
  return TIME_FORMS.find((form) => !Number.isNaN(form.parse(text))) ?? null;
}

/** Whether `text` is a time in any form. */
export function looksLikeTime(text: string): boolean {
  return timeFormOf(text) !== null;
}
