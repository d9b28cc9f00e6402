// Time in a capture as axis, cursor and lists say it: in seconds in short captures, by minutes and hours in long ones, the
// same all over one capture.

import type { Stretch } from '../../core/windows/window.ts';
import { KEPT_SPACE, numberWords } from './numbers.ts';

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

/**
 * "61.2 to 121.2 s", in a longer capture "24:10.0 to 25:10.0", as its axis counts. `captureS` is the length of the capture;
 * without one the stretch itself says how to count.
 */
export function stretchWords({ startS, endS }: Stretch, captureS: number = endS): string {
  const form = timeForm(captureS);
  return `${timeWords(startS, form, 1)} to ${momentWords(endS, form, 1)}`;
}
