// The words for what the axis of a trace shows: its digits, and the clock where the file had one.

import { timeWords } from '../words/captureTimes.ts';

/** Digits of a second that one pixel can tell apart, at most a tenth of a millisecond. */
export function secondDigits(secondsPerPixel: number): number {
  return Math.min(4, Math.max(0, Math.ceil(-Math.log10(secondsPerPixel) - 1e-9)));
}

/**
 * The clock at `timeS`, "14:03:27.4", from the clock of second 0 in ISO 8601; null where there is none. Only the time of
 * day is used, as the file wrote it: no zone is assumed and none is converted.
 */
export function clockWords(startClock: string | null, timeS: number, digits: number): string | null {
  const found = startClock === null ? null : /T(\d{2}):(\d{2})(?::(\d{2}(?:\.\d+)?))?/.exec(startClock);
  if (found === null) return null;
  const [, hours = '0', minutes = '0', seconds = '0'] = found;
  const dayS = 86_400;
  const startS = Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds);
  const scale = 10 ** digits;
  const ofDay = ((Math.floor((startS + timeS) * scale + 1e-6) % (dayS * scale)) + dayS * scale) % (dayS * scale);
  return timeWords(ofDay / scale, 'h:min:s', digits).padStart(digits === 0 ? 8 : digits + 9, '0');
}
