// Times after RFC 3339 section 5.8 (examples) and ISO 8601: check 7.10, whose seconds since 1970 were computed with
// Python's datetime. Leap days by the Gregorian rule, 1582.

import { describe, expect, it } from 'vitest';
import { dayNumber } from '../../core/reading/timeForms/clockParts.ts';
import { isoInstant } from '../../core/reading/timeForms/isoInstant.ts';

describe('RFC 3339 and ISO 8601', () => {
  it.each([
    ['1985-04-12T23:20:50.52Z', 482196050.52],
    ['1996-12-19T16:39:57-08:00', 851042397],
    ['2024-02-29T23:59:59.123+05:30', 1709231399.123],
    ['1937-01-01T12:00:27.87+00:20', -1041337172.13],
    ['1990-12-31T23:59:60Z', 662688000],
    ['1990-12-31T15:59:60-08:00', 662688000],
  ])('%s is %f', (text, seconds) => {
    expect(isoInstant.parse(text)).toBe(seconds);
  });

  it('takes a comma before the fraction as ISO 8601 does, and a blank for the T', () => {
    expect(isoInstant.parse('1985-04-12 23:20:50,52Z')).toBe(482196050.52);
  });

  it('knows UTC with an unknown local offset, -00:00, as UTC', () => {
    expect(isoInstant.parse('1985-04-12T23:20:50.52-00:00')).toBe(482196050.52);
  });

  it('gives no zone to a time without one', () => {
    expect(isoInstant.zone?.('2024-02-29T23:59:59')).toBeNull();
    expect(isoInstant.zone?.('2024-02-29T23:59:59+0530')).toBe('+05:30');
    expect(isoInstant.zone?.('2024-02-29T23:59:59z')).toBe('Z');
  });

  it.each([
    '2023-02-29T00:00:00Z',
    '1900-02-29T00:00:00Z',
    '2024-13-01T00:00:00Z',
    '2024-00-10T00:00:00Z',
    '2024-04-31T00:00:00Z',
    '2024-01-01T00:60:00Z',
    '2024-01-01T00:00:00+25:00',
  ])('%s names no moment', (text) => {
    expect(isoInstant.parse(text)).toBeNaN();
  });

  it('counts days as the platform does, over four centuries', () => {
    for (let year = 1800; year < 2200; year++) {
      for (const [month, day] of [
        [1, 1],
        [2, 28],
        [3, 1],
        [12, 31],
      ] as const) {
        expect(dayNumber(year, month, day)).toBe(Date.UTC(year, month - 1, day) / 86_400_000);
      }
    }
  });
});
