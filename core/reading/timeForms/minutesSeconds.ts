import { secondsOf } from './clockParts.ts';
import type { TimeForm } from './timeForm.ts';

const MINUTES = /^(\d{1,4}):(\d{2})(?:[.,](\d{1,9}))?$/;

/**
 * MM:SS with or without a fraction. Elapsed seconds. HH:MM without seconds looks the same and is read as MM:SS: no
 * instrument of the trade records a row a minute (common practice, no source).
 */
export const minutesSeconds: TimeForm = {
  id: 'minutesSeconds',
  words: 'minutes and seconds',
  kind: 'elapsed',
  examples: [
    ['00:01', 1],
    ['02:03.4', 123.4],
    ['75:00,25', 4500.25],
  ],
  parse(text) {
    const match = MINUTES.exec(text.trim());
    if (match === null || Number(match[2]) > 59) return Number.NaN;
    return secondsOf(0, Number(match[1]), Number(match[2]), match[3] ?? '');
  },
};
