import { secondsOf } from './clockParts.ts';
import type { TimeForm } from './timeForm.ts';

/** Days, then a clock that counts up. */
const DAYS_AND_CLOCK = /^(\d{1,5}) days?,? (?:\+)?(\d{1,2}):(\d{2}):(\d{2})(?:[.,](\d{1,9}))?$/;
/** The form of ISO 8601 for a length of time, without months and years, which have no fixed length. */
const DURATION = /^P(?:(\d{1,5})D)?T(?=\d)(?:(\d{1,5})H)?(?:(\d{1,5})M)?(?:(\d{1,9})(?:[.,](\d{1,9}))?S)?$/;

/** A length of time since the start: "0 days 00:01:02.5" or, after ISO 8601, "PT1M2.5S". */
export const timeSpan: TimeForm = {
  id: 'timeSpan',
  words: 'lengths of time',
  kind: 'elapsed',
  examples: [
    ['0 days 00:01:02.500000', 62.5],
    ['1 day, 2:03:04', 93784],
    ['PT1M2.5S', 62.5],
    ['P0DT0H0M0.1S', 0.1],
  ],
  parse(text) {
    const match = DAYS_AND_CLOCK.exec(text) ?? DURATION.exec(text);
    if (match === null) return Number.NaN;
    const part = (group: number): number => Number(match[group] ?? 0);
    return secondsOf(part(1) * 24 + part(2), part(3), part(4), match[5] ?? '');
  },
};
