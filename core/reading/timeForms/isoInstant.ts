import { clockBytes, twoDigits } from './clockBytes.ts';
import { dayNumber, secondsOf } from './clockParts.ts';
import type { TimeForm } from './timeForm.ts';

const EXTENDED =
  /^(\d{4})[-/](\d{1,2})[-/](\d{1,2})(?:[Tt_]|\s+)(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,:](\d{1,9}))?)?\s*(?:(?:UTC|GMT)(?=[+-]))?([Zz]|UTC|GMT|[+-]\d{2}(?::?\d{2})?)?(?:\s[A-Z]{3,5})?$/;
const BASIC = /^(\d{4})(\d{2})(\d{2})[Tt_ ](\d{2})(\d{2})(\d{2})(?:[.,](\d{1,9}))?([Zz]|[+-]\d{2}(?::?\d{2})?)?$/;

/**
 * A date and a time of day after ISO 8601 and RFC 3339, year first, with a blank instead of the T allowed. With a zone
 * the value is UTC; without one it is the local time as written, never assumed to be UTC. Letters of a zone other than
 * Z, UTC and GMT are passed over: CST stands for three zones.
 */
export const isoInstant: TimeForm = {
  id: 'isoInstant',
  words: 'dates with times',
  kind: 'instant',
  examples: [
    ['1985-04-12T23:20:50.52Z', 482196050.52],
    ['1996-12-19T16:39:57-08:00', 851042397],
    ['2024-02-29T23:59:59.123+05:30', 1709231399.123],
    ['2024-02-29 23:59:59,5', 1709251199.5],
    ['20240229T235959', 1709251199],
    ['2024-02-29 23:59:59.5 UTC', 1709251199.5],
    ['2024-02-29 23:59:59 GMT+01:00', 1709247599],
    ['2024-02-29 23:59:59 CET', 1709251199],
  ],
  parse(text) {
    const match = EXTENDED.exec(text) ?? BASIC.exec(text);
    if (match === null) return Number.NaN;
    const days = dayNumber(Number(match[1]), Number(match[2]), Number(match[3]));
    const hours = Number(match[4]);
    const minutes = Number(match[5]);
    const seconds = Number(match[6] ?? 0);
    if (hours > 24 || minutes > 59 || seconds > 60) return Number.NaN;
    const offset = offsetSeconds(match[8]);
    return secondsOf(days * 24 + hours, minutes, seconds - offset, match[7] ?? '');
  },
  quick(bytes, start, end) {
    const year = twoDigits(bytes, start) * 100 + twoDigits(bytes, start + 2);
    const between = bytes[start + 10];
    if (bytes[start + 4] !== 45 || bytes[start + 7] !== 45 || (between !== 32 && between !== 84)) return Number.NaN;
    const zulu = bytes[end - 1] === 90 ? 1 : 0;
    const days = dayNumber(year, twoDigits(bytes, start + 5), twoDigits(bytes, start + 8));
    return clockBytes(bytes, start + 11, end - zulu, days);
  },
  zone(text) {
    const match = /(?:[Zz]|UTC|GMT|[+-]\d{2}(?::?\d{2})?)$/.exec(text.trim().slice(10));
    if (match === null) return null;
    const zone = match[0].toUpperCase();
    if (/^[A-Z]/.test(zone)) return 'Z';
    const digits = zone.replace(/[^\d]/g, '').padEnd(4, '0');
    return `${zone[0] ?? '+'}${digits.slice(0, 2)}:${digits.slice(2)}`;
  },
};

/** Seconds that a zone is ahead of UTC; NaN for one that cannot be. */
function offsetSeconds(zone: string | undefined): number {
  if (zone === undefined || /^[A-Za-z]/.test(zone)) return 0;
  const digits = zone.replace(/[^\d]/g, '').padEnd(4, '0');
  const hours = Number(digits.slice(0, 2));
  const minutes = Number(digits.slice(2));
  if (hours > 23 || minutes > 59) return Number.NaN;
  return (zone.startsWith('-') ? -1 : 1) * (hours * 3600 + minutes * 60);
}
