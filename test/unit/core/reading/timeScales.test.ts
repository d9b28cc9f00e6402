// What the numbers of a time column count, and files of many recordings: a wrong scale or a wrong order is wrong in
// everything that follows, and nobody sees it.

import { describe, expect, it } from 'vitest';
import type { Capture } from '../../../../core/capture/capture.ts';
import { readText } from '../../../support/readText.ts';

/** A hundred rows ten times a second, whose times `time` writes. */
const drive = (heading: string, time: (s: number) => string) =>
  `${heading},RPM,ECT (°C)\n${Array.from({ length: 100 }, (_, i) => `${time(i / 10)},${2200 + (i % 9)},88\n`).join('')}`;
const ids = ({ warnings }: Capture) => warnings.map(({ id }) => id).filter((id) => id !== 'channelNeverChanges');

describe('the scale of numeric times', () => {
  // 2024-01-15T13:05:30Z is 1,705,323,930 s after 1970, 45,306.5454861 days after 1899-12-30, 739,266.5454861 days after
  // the year 0 and 2,460,325.0454861 days of astronomers; since 1904 the first has 2,082,844,800 s more.
  const scales: readonly (readonly [string, string, (s: number) => string, string | null])[] = [
    ['µs since start-up that look like s since 1970', 'Time [us]', (s) => String(900_000_000 + s * 1e6), null],
    ['ms since start-up that look like s since 1970', 'millis', (s) => String(1_000_000_000 + s * 1000), null],
    ['s since 1970', 'Time (s)', (s) => (1_705_323_930 + s).toFixed(1), '2024-01-15T13:05:30Z'],
    [
      'ms since 1970 under a heading of s',
      'time_s',
      (s) => String(1_705_323_930_000 + s * 1000),
      '2024-01-15T13:05:30Z',
    ],
    ['ns since 1970', 'time', (s) => `${1_705_323_930 * 10 + s * 10}00000000`, '2024-01-15T13:05:30Z'],
    ['s since 1904', 'Time', (s) => (1_705_323_930 + 2_082_844_800 + s).toFixed(3), null],
    ['days of a spreadsheet', 'Date', (s) => (45_306.5454861 + s / 86_400).toFixed(10), null],
    ['days since the year 0', 'time', (s) => (739_266.5454861 + s / 86_400).toFixed(10), null],
    ['days of astronomers', 'time', (s) => (2_460_325.0454861 + s / 86_400).toFixed(10), null],
  ];

  it.each(scales)('%s', async (_, heading, time, startClock) => {
    const { capture } = await readText(drive(heading, time));
    expect(capture.durationS).toBeCloseTo(9.9, 4);
    expect(capture.startClock).toBe(startClock);
    expect(capture.channels.map(({ role }) => role)).toEqual(['rpm', 'coolant']);
  });

  it('µs that nobody names, at 100 rows a second', async () => {
    const { capture } = await readText(drive('Timestamp', (s) => String(900_000_000 + s * 100_000)));
    expect(capture.durationS).toBeCloseTo(0.99, 6);
    expect(ids(capture)).toEqual(['timeGuessed']);
  });

  it('clocks with the letters of a zone: UTC is one, CET is passed over', async () => {
    const clock = (zone: string) => (s: number) => `2024-01-15 13:05:3${s.toFixed(1)}${zone}`;
    expect((await readText(drive('Time', clock(' UTC')))).capture.startClock).toBe('2024-01-15T13:05:30Z');
    expect((await readText(drive('Time', clock(' CET')))).capture.startClock).toBe('2024-01-15T13:05:30');
  });

  it.each(['UTC', 'Time', 'time_hhmmss'])('a clock without colons under %s', async (heading) => {
    const clock = (s: number) => (s < 5 ? 130_555 + s : 130_600 + s - 5).toFixed(1);
    const { capture } = await readText(drive(heading, clock));
    expect(capture.durationS).toBeCloseTo(9.9, 6);
    expect(capture.startClock).toBe('13:05:55');
    expect(ids(capture)).toEqual([]);
  });

  it('a clock without colons is told by its heading where no minute passes in the first rows', async () => {
    const { capture } = await readText(drive('UTC', (s) => (130_530 + s).toFixed(1)));
    expect(capture.startClock).toBe('13:05:30');
  });

  it('a time that stands still is named as the reason why a rate is assumed', async () => {
    const { capture, question } = await readText(drive('Time (s)', () => '12.5'));
    expect(capture.warnings.find(({ id }) => id === 'noTime')?.detail).toContain('“Time” tells no row from another');
    expect(question?.needsRate).toBe(true);
  });

  it('a first column with fractions of its steps is the time, in any language', async () => {
    const { capture } = await readText(drive('No. ñ', (s) => s.toFixed(1)));
    expect(capture.durationS).toBeCloseTo(9.9, 9);
    expect(ids(capture)).toEqual(['timeGuessed']);
  });

  it('seconds that jump by 40 are seconds', async () => {
    const { capture } = await readText(drive('Time (s)', (s) => (s < 5 ? 155 + s : 255 + s).toFixed(1)));
    expect(capture.durationS).toBeCloseTo(109.9, 6);
  });

  it('a temperature that rises is no time, even where its name begins with T', async () => {
    const rows = Array.from({ length: 100 }, (_, i) => `${i / 10},${20 + i / 2},${2200 + (i % 9)}\n`).join('');
    const { capture } = await readText(`t,T_coolant,n_eng rpm\n${rows}`);
    expect(capture.layout.id).toBe('wideText');
    expect(capture.durationS).toBeCloseTo(9.9, 9);
    expect(capture.channels.map(({ role }) => role)).toEqual(['coolant', 'rpm']);
  });
});

describe('many recordings in one file', () => {
  const trips = (count: number, rows: number) =>
    Array.from({ length: count * rows }, (_, i) => `${Math.floor(i / rows)},${(i % rows) * 1000},${800 + i}\n`).join(
      '',
    );

  it('are put one behind the other, however many and however short, and never sorted into each other', async () => {
    const { capture } = await readText(`Trip,Timestamp(ms),Engine RPM[RPM]\n${trips(40, 60)}`);
    expect(capture.warnings.find(({ id }) => id === 'secondRecording')).toMatchObject({
      count: 39,
      row: 62,
      repaired: true,
    });
    expect(capture.warnings.some(({ id }) => id === 'outOfOrder')).toBe(false);
    const rpm = capture.channels.find(({ role }) => role === 'rpm');
    expect([...(rpm?.values ?? [])]).toEqual(Array.from({ length: 2400 }, (_, i) => 800 + i));
    expect(capture.durationS).toBeCloseTo(40 * 59 + 39 * 10, 6);
  });
});
