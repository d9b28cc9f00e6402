import { clockBytes } from './clockBytes.ts';
import { secondsOf } from './clockParts.ts';
import type { TimeForm } from './timeForm.ts';

// A fraction may follow a point, a comma, or a third colon, as some instruments write milliseconds.
const CLOCK = /^(\d{1,2}):(\d{2}):(\d{2})(?:[.,:](\d{1,9}))?(?:\s*([AaPp])\.?\s?[Mm]\.?)?$/;

/** HH:MM:SS with or without a fraction, twelve or twenty-four hours. Seconds of the day. 23:59:60 is a leap second. */
export const clockOfDay: TimeForm = {
  id: 'clockOfDay',
  words: 'clock times',
  kind: 'clock',
  examples: [
    ['00:00:01', 1],
    ['12:34:56.789', 45296.789],
    ['12:34:56,5', 45296.5],
    ['12:34:56:250', 45296.25],
    ['1:02:03.4 PM', 46923.4],
    ['12:00:00 AM', 0],
    ['01:02:03 p. m.', 46923],
  ],
  parse(text) {
    const match = CLOCK.exec(text.trim());
    if (match === null) return Number.NaN;
    const half = match[5]?.toLowerCase();
    let hours = Number(match[1]);
    const minutes = Number(match[2]);
    const seconds = Number(match[3]);
    if (half !== undefined) {
      if (hours < 1 || hours > 12) return Number.NaN;
      hours = (hours % 12) + (half === 'p' ? 12 : 0);
    }
    if (hours > 24 || minutes > 59 || seconds > 60) return Number.NaN;
    return secondsOf(hours, minutes, seconds, match[4] ?? '');
  },
  quick: (bytes, start, end) => clockBytes(bytes, start, end, 0),
};
