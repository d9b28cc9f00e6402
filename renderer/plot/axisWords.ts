// Time as the axis and the cursor say it: in seconds in short captures, by minutes and hours in long ones, the same all
// over one capture. And by the clock, where the file had one.

import { KEPT_SPACE, numberWords } from '../words/numbers.ts';

/** From this length on a capture counts in minutes, s. */
const COUNT_MINUTES_FROM_S = 600;
const COUNT_HOURS_FROM_S = 3600;

export type TimeForm = 's' | 'min:s' | 'h:min:s';

export function timeForm(durationS: number): TimeForm {
  if (durationS < COUNT_MINUTES_FROM_S) return 's';
  return durationS < COUNT_HOURS_FROM_S ? 'min:s' : 'h:min:s';
}

/** "61.2", "1:01.2", "0:01:01.2", with `digits` after the decimal sign of the seconds; no unit. */
export function timeWords(timeS: number, form: TimeForm, digits: number): string {
  if (form === 's') return numberWords(timeS, digits);
  const scale = 10 ** digits;
  const whole = Math.round(Math.abs(timeS) * scale);
  const seconds = ((whole % (60 * scale)) / scale).toFixed(digits).padStart(digits === 0 ? 2 : digits + 3, '0');
  const minutes = Math.floor(whole / (60 * scale));
  const sign = timeS < 0 && whole > 0 ? '−' : '';
  if (form === 'min:s') return `${sign}${minutes}:${seconds}`;
  return `${sign}${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}:${seconds}`;
}

/** The same with its unit where the figures alone do not tell: "61.2 s", "1:01.2". */
export function momentWords(timeS: number, form: TimeForm, digits: number): string {
  const words = timeWords(timeS, form, digits);
  return form === 's' ? `${words}${KEPT_SPACE}s` : words;
}

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
