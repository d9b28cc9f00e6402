import { describe, expect, test } from 'vitest';
import { parseClock, parseWindow, placeWindow } from '../../../../main/command/typedWindow.ts';
import { heldEngine } from '../../../support/madeCapture.ts';

function place(typed: string, startClock: string | null, durationS = 600) {
  const window = parseWindow(typed);
  if (window === null) throw new Error(`${typed} was not understood`);
  return placeWindow(
    window,
    heldEngine(() => 0.6, { startClock, durationS }),
  );
}

describe('windows as people type them', () => {
  test.each([
    ['seconds', '61.2..121.2', null, 61.2, 121.2],
    ['a decimal comma', '61,2..121,2', null, 61.2, 121.2],
    ['blanks', ' 5 .. 7 ', null, 5, 7],
    ['clock times', '14:03:30..14:04:30.5', '2026-11-24T14:03:00', 30, 90.5],
    ['clock times to the minute', '14:04..14:05', '2026-11-24T14:03:00', 60, 120],
    ['a mix', '30..14:04', '2026-11-24T14:03:00', 30, 60],
    ['a clock without a day', '14:04:00..14:04:10', '14:03:00', 60, 70],
    ['days', '2026-11-24T14:04:00..2026-11-24T14:05:00', '2026-11-24T14:03:00', 60, 120],
    ['over midnight by the time of day', '00:00:10..00:01:00', '2026-11-24T23:59:50', 20, 70],
    ['over midnight by the day', '2026-11-25T00:00:10..2026-11-25T00:01:00', '2026-11-24T23:59:50', 20, 70],
    ['two zones', '2026-11-24T13:04:00Z..2026-11-24T13:05:00Z', '2026-11-24T14:03:00+01:00', 60, 120],
    ['one zone: the clock of the place', '14:04..14:05', '2026-11-24T14:03:00+01:00', 60, 120],
    ['a leap day', '2024-02-29T23:59:59..2024-03-01T00:00:09', '2024-02-29T23:59:49', 10, 20],
  ])('%s', (_, typed, startClock, startS, endS) => {
    const placed = place(typed, startClock);
    expect(typeof placed === 'string' ? placed : [placed.startS, placed.endS].map((s) => Number(s.toFixed(6)))).toEqual(
      [startS, endS],
    );
  });

  test.each([
    ['no clock in the capture', '14:03..14:04', null, 'has no clock'],
    ['backwards', '20..10', null, 'does not end after it starts'],
    ['empty', '10..10', null, 'does not end after it starts'],
    ['beyond the end', '700..800', null, 'lies outside the capture, which lasts 600.0 s'],
    ['before the start, by the clock', '13:00..13:01', '2026-11-24T14:03:00', 'starts at 2026-11-24T14:03:00'],
  ])('%s has no place, and says so', (_, typed, startClock, part) => {
    expect(place(typed, startClock)).toContain(part);
  });

  test.each(['24:00', '12:60', '12:30:61', '2026-02-29T12:00', '2026-13-01T00:00', '12', '12:3', 'noon'])(
    '%s is no clock time',
    (typed) => {
      expect(parseClock(typed)).toBeNull();
    },
  );

  test('a window that runs over an edge of the capture ends there: what was not recorded makes no window longer', () => {
    expect(place('590..700', null)).toEqual({ startS: 590, endS: 600 });
    const early = '2026-11-24T14:02:50..2026-11-24T14:03:40';
    expect(place(early, '2026-11-24T14:03:00')).toEqual({ startS: 0, endS: 40 });
  });
});
