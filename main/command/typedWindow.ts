// Windows as people type them: "61.2..121.2" in seconds, or by the clock of the capture.

import type { Capture } from '../../core/capture/capture.ts';
import type { Stretch } from '../../core/windows/window.ts';

/** A moment as it was typed: seconds from the capture's start, or a clock time with or without its day and zone. */
export type TypedMoment =
  | { readonly kind: 'seconds'; readonly seconds: number }
  | { readonly kind: 'clock'; readonly clock: Clock };

export interface TypedWindow {
  readonly from: TypedMoment;
  readonly to: TypedMoment;
  /** As it was typed, for complaints. */
  readonly words: string;
}

export interface Clock {
  /** Days since 1970-01-01, or null where no day was given. */
  readonly day: number | null;
  readonly secondOfDay: number;
  /** Seconds east of UTC, or null for a local time of the place of recording. */
  readonly offsetS: number | null;
}

const DAY_S = 86_400;
const CLOCK = /^(?:(\d{4})-(\d{2})-(\d{2})[T ])?(\d{1,2}):(\d{2})(?::(\d{2}(?:[.,]\d+)?))?(Z|[+-]\d{2}:?\d{2})?$/i;

/** A window, or null where it is not written as one. Which end comes first shows only against a capture's clock. */
export function parseWindow(typed: string): TypedWindow | null {
  const [from = '', to = '', ...more] = typed.split('..');
  const [first, second] = [parseMoment(from.trim()), parseMoment(to.trim())];
  return first === null || second === null || more.length > 0 ? null : { from: first, to: second, words: typed };
}

function parseMoment(typed: string): TypedMoment | null {
  if (/^\d+(?:[.,]\d*)?$/.test(typed)) return { kind: 'seconds', seconds: Number(typed.replace(',', '.')) };
  const clock = parseClock(typed);
  return clock === null ? null : { kind: 'clock', clock };
}

/** A clock time of ISO 8601, to the minute or finer; null for anything else, also for a 61st minute or 32nd day. */
export function parseClock(typed: string): Clock | null {
  const [, year, month, date, hours, minutes, seconds = '0', zone] = CLOCK.exec(typed) ?? [];
  if (hours === undefined || minutes === undefined) return null;
  const secondOfDay = Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds.replace(',', '.'));
  if (Number(hours) > 23 || Number(minutes) > 59 || Number(seconds.replace(',', '.')) >= 61) return null;
  const day = year === undefined ? null : dayNumber(Number(year), Number(month), Number(date));
  if (day !== null && Number.isNaN(day)) return null;
  return { day, secondOfDay, offsetS: zone === undefined ? null : offsetOf(zone) };
}

/** Days since 1970-01-01; NaN for a day that the calendar does not have. */
function dayNumber(year: number, month: number, date: number): number {
  const day = new Date(Date.UTC(year, month - 1, date));
  return day.getUTCMonth() === month - 1 && day.getUTCDate() === date ? day.getTime() / 1000 / DAY_S : Number.NaN;
}

function offsetOf(zone: string): number {
  if (/^z$/i.test(zone)) return 0;
  const seconds = Number(zone.slice(1, 3)) * 3600 + Number(zone.slice(-2)) * 60;
  return zone.startsWith('-') ? -seconds : seconds;
}

/**
 * The window in seconds of a capture, without what lies before its start or behind its end, where nothing was recorded that
 * could be judged; or a sentence why it has no place there.
 */
export function placeWindow(window: TypedWindow, capture: Capture): Stretch | string {
  const start = capture.startClock === null ? null : parseClock(capture.startClock);
  const moments = [window.from, window.to];
  if (start === null && moments.some(({ kind }) => kind === 'clock')) {
    return `The capture has no clock, so ${window.words} cannot be found in it; give the window in seconds.`;
  }
  const [startS = 0, endS = 0] = moments.map((moment) => secondsIn(moment, start));
  const from = `${Number(startS.toFixed(3))} to ${Number(endS.toFixed(3))} s`;
  if (!(startS < endS)) return `The window ${window.words} (${from}) does not end after it starts.`;
  if (startS >= capture.durationS || endS <= 0) {
    const ofClock = capture.startClock === null ? '' : ` and starts at ${capture.startClock}`;
    return `The window ${window.words} (${from}) lies outside the capture, which lasts ${capture.durationS.toFixed(1)} s${ofClock}.`;
  }
  return { startS: Math.max(0, startS), endS: Math.min(capture.durationS, endS) };
}

function secondsIn(moment: TypedMoment, start: Clock | null): number {
  if (moment.kind === 'seconds') return moment.seconds;
  if (start === null) return Number.NaN;
  const { day, secondOfDay, offsetS } = moment.clock;
  // A zone counts only where both have one; otherwise both are read on the clock of the place of recording.
  const shift = offsetS !== null && start.offsetS !== null ? start.offsetS - offsetS : 0;
  const between = secondOfDay - start.secondOfDay + shift;
  if (day !== null && start.day !== null) return (day - start.day) * DAY_S + between;
  // A time of day without its day is the first such moment after the start: captures may run past midnight.
  return ((between % DAY_S) + DAY_S) % DAY_S;
}
