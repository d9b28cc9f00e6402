// Times as instruments write them and as clocks spoil them, and what is told about it.

import { describe, expect, it } from 'vitest';
import type { Capture } from '../../../../core/capture/capture.ts';
import { sampleCount, timeAt } from '../../../../core/capture/timeBase.ts';
import { readText } from '../../../support/readText.ts';

const at = ({ channels }: Capture): number[] => {
  const time = channels[0]?.time ?? { kind: 'regular', startS: 0, stepS: 1, length: 0 };
  return Array.from({ length: sampleCount(time) }, (_, i) => timeAt(time, i));
};
const ids = ({ warnings }: Capture) => warnings.map(({ id }) => id).filter((id) => id !== 'channelNeverChanges');
const values = ({ channels }: Capture) => [...(channels[0]?.values ?? [])];

/** A file with these times and the rows counted as engine speeds from 800 on. */
const timed = (heading: string, cells: readonly string[], lineEnd = '\n') =>
  `${heading};RPM\n${cells.map((cell, i) => `${cell};${800 + i}${lineEnd}`).join('')}`;

const two = (value: number) => String(value).padStart(2, '0');

describe('the time since the engine was started', () => {
  // Whole seconds with several rows in each; the second heading stands so in recordings of a published study.
  it.each(['ENGINE_RUN_TIME ()', 'ENGINE_RUN_TINE ()'])(
    'is taken where there is no other time: %s',
    async (heading) => {
      const cells = Array.from({ length: 60 }, (_, i) => `${Math.floor(i / 2)}.000000`);
      const { capture } = await readText(timed(heading, cells));
      expect(capture.durationS).toBeCloseTo(29.5, 6);
      expect(capture.channels.map(({ role }) => role)).toEqual(['rpm']);
      expect(ids(capture)).toEqual(expect.arrayContaining(['timeGuessed']));
      expect(ids(capture)).not.toContain('noTime');
    },
  );
});

describe('forms of time', () => {
  const forms: readonly (readonly [string, string, (i: number) => string, string | null])[] = [
    ['seconds', 'Time (s)', (i) => (i / 4).toFixed(2), null],
    ['milliseconds by their unit', 'Time [ms]', (i) => String(i * 250), null],
    ['milliseconds by the name', 'timestamp_ms', (i) => String(i * 250), null],
    ['microseconds', 'Time (µs)', (i) => String(i * 250_000), null],
    ['minutes', 'Zeit (min)', (i) => (i / 240).toFixed(9), null],
    ['a clock', 'Time', (i) => `14:02:${two(10 + Math.floor(i / 4))}.${two((i % 4) * 25)}`, '14:02:10'],
    ['a clock with commas', 'Uhrzeit', (i) => `14:02:${two(10 + Math.floor(i / 4))},${two((i % 4) * 25)}0`, '14:02:10'],
    [
      'a clock of twelve hours',
      'Time',
      (i) => `2:02:${two(10 + Math.floor(i / 4))}.${two((i % 4) * 25)} PM`,
      '14:02:10',
    ],
    ['minutes and seconds', 'Elapsed', (i) => `02:${two(10 + Math.floor(i / 4))}.${two((i % 4) * 25)}`, null],
    [
      'ISO 8601 with a zone',
      'Timestamp',
      (i) => `2024-03-01T14:02:${two(10 + Math.floor(i / 4))}.${two((i % 4) * 25)}+01:00`,
      '2024-03-01T14:02:10+01:00',
    ],
    [
      'ISO 8601 without one',
      'Timestamp',
      (i) => `2024-03-01 14:02:${two(10 + Math.floor(i / 4))}.${two((i % 4) * 25)}`,
      '2024-03-01T14:02:10',
    ],
    [
      'a date with points',
      'Zeitstempel',
      (i) => `01.03.2024 14:02:${two(10 + Math.floor(i / 4))},${two((i % 4) * 25)}`,
      '2024-03-01T14:02:10',
    ],
    ['seconds since 1970', 'timestamp', (i) => (1_709_301_730 + i / 4).toFixed(2), '2024-03-01T14:02:10Z'],
    ['milliseconds since 1970', 'timestamp', (i) => String(1_709_301_730_000 + i * 250), '2024-03-01T14:02:10Z'],
    [
      'microseconds since 1970',
      'timestamp',
      (i) => String(1_709_301_730_000_000 + i * 250_000),
      '2024-03-01T14:02:10Z',
    ],
  ];

  it.each(forms)('%s', async (_, heading, cell, clock) => {
    const { capture } = await readText(
      timed(
        heading,
        Array.from({ length: 40 }, (__, i) => cell(i)),
      ),
    );
    const times = at(capture);
    expect(times).toHaveLength(40);
    times.forEach((timeS, i) => {
      expect(timeS).toBeCloseTo(i / 4, 6);
    });
    expect(capture.startClock).toBe(clock);
  });

  it('a date and a time in two columns', async () => {
    const text = `Datum;Zeit;RPM\n${Array.from({ length: 20 }, (_, i) => `29.02.2024;23:59:${two(50 + (i >> 1))},${i % 2 === 0 ? '0' : '5'};800`.replace('29.02.2024;23:59:6', '01.03.2024;00:00:0')).join('\n')}\n`;
    const { capture } = await readText(text);
    expect(capture.startClock).toBe('2024-02-29T23:59:50');
    expect(at(capture)[19]).toBeCloseTo(9.5, 6);
    expect(ids(capture)).toEqual([]);
  });

  it('a clock of whole seconds with the milliseconds beside it', async () => {
    const rows = Array.from({ length: 60 }, (_, i) => `12:00:${two(Math.floor(i / 10))};${(i % 10) * 100};${800 + i}`);
    const { capture } = await readText(`Time;Milliseconds;RPM\n${rows.join('\n')}\n`);
    expect(at(capture)).toEqual(Array.from({ length: 60 }, (_, i) => expect.closeTo(i / 10, 9)));
    expect(capture.channels).toHaveLength(1);
    expect(ids(capture)).toEqual([]);
  });

  it('steps of a short decimal number, also beside the seconds since 1970', async () => {
    const cells = Array.from({ length: 80 }, (_, i) => (1_709_301_730 + i / 10).toFixed(1));
    const { capture } = await readText(timed('timestamp', cells));
    expect(capture.channels[0]?.time).toEqual({ kind: 'regular', startS: 0, stepS: 0.1, length: 80 });
  });

  it('says that a unit was guessed from the size of the steps', async () => {
    const { capture } = await readText(
      timed(
        'Time',
        Array.from({ length: 30 }, (_, i) => String(i * 100)),
      ),
    );
    expect(ids(capture)).toEqual(['timeGuessed']);
    expect(capture.durationS).toBeCloseTo(2.9, 9);
  });

  it('chooses the finer of two time columns', async () => {
    const text = `Clock;Time (ms);RPM\n${Array.from({ length: 30 }, (_, i) => `12:00:${two(Math.floor(i / 10))};${i * 100};${800 + i}`).join('\n')}\n`;
    const { capture } = await readText(text);
    expect(capture.durationS).toBeCloseTo(2.9, 9);
    expect(capture.channels).toHaveLength(1);
  });

  it('describes regular times, and lists those that are not', async () => {
    const regular = (
      await readText(
        timed(
          'Time (s)',
          Array.from({ length: 400 }, (_, i) => (i * 0.001).toFixed(3)),
        ),
      )
    ).capture;
    expect(regular.channels[0]?.time).toEqual({ kind: 'regular', startS: 0, stepS: 0.001, length: 400 });
    const late = (
      await readText(
        timed(
          'Time (s)',
          Array.from({ length: 400 }, (_, i) => (i === 399 ? 0.4 : i * 0.001).toFixed(3)),
        ),
      )
    ).capture;
    expect(late.channels[0]?.time.kind).toBe('listed');
    expect(at(late).slice(0, 399)).toEqual(
      at(regular)
        .slice(0, 399)
        .map((timeS) => Number(timeS.toFixed(3))),
    );
  });
});

describe('clocks that are not straight', () => {
  const seconds = (cells: readonly number[]) =>
    readText(
      timed(
        'Time (s)',
        cells.map((cell) => cell.toFixed(2)),
      ),
    );

  it('past midnight goes on', async () => {
    const cells = Array.from({ length: 40 }, (_, i) => {
      const s = (86_390 + i) % 86_400;
      return `${two(Math.floor(s / 3600))}:${two(Math.floor(s / 60) % 60)}:${two(s % 60)}`;
    });
    const { capture } = await readText(timed('Time', cells));
    expect(at(capture)).toEqual(Array.from({ length: 40 }, (_, i) => i));
    expect(capture.warnings.find(({ id }) => id === 'clockPastMidnight')).toMatchObject({ row: 12, repaired: true });
  });

  it('rows that come late are put in order, with their values', async () => {
    const { capture } = await seconds([0, 0.1, 0.2, 0.4, 0.3, 0.5, 0.8, 0.7, 0.6, 0.9, 1]);
    expect(at(capture).map((timeS) => timeS.toFixed(1))).toEqual([
      '0.0',
      '0.1',
      '0.2',
      '0.3',
      '0.4',
      '0.5',
      '0.6',
      '0.7',
      '0.8',
      '0.9',
      '1.0',
    ]);
    expect(values(capture)).toEqual([800, 801, 802, 804, 803, 805, 808, 807, 806, 809, 810]);
    expect(capture.warnings.find(({ id }) => id === 'outOfOrder')).toMatchObject({ row: 6, count: 3, repaired: true });
  });

  it('a file written newest first is turned round', async () => {
    const { capture } = await seconds(Array.from({ length: 50 }, (_, i) => (49 - i) / 10));
    expect(values(capture)).toEqual(Array.from({ length: 50 }, (_, i) => 849 - i));
    expect(ids(capture)).toEqual(['outOfOrder']);
  });

  it('a file in no order is sorted', async () => {
    const order = Array.from({ length: 300 }, (_, i) => (i * 71) % 300);
    const { capture } = await seconds(order.map((k) => k / 10));
    expect(values(capture)).toEqual(Array.from({ length: 300 }, (_, k) => 800 + order.indexOf(k)));
  });

  it('a jump back of the clock is bridged', async () => {
    const { capture } = await seconds(Array.from({ length: 200 }, (_, i) => (i < 100 ? 50 + i / 10 : 20 + i / 10)));
    expect(capture.durationS).toBeCloseTo(19.9, 9);
    expect(capture.warnings.find(({ id }) => id === 'clockJumpedBack')).toMatchObject({
      row: 102,
      count: 1,
      repaired: true,
    });
  });

  it('a second recording in the file is put behind the first, with a silence between', async () => {
    const { capture } = await seconds(Array.from({ length: 60 }, (_, i) => (i % 30) / 10));
    expect(at(capture)[30]).toBeCloseTo(2.9 + 10, 9);
    expect(ids(capture)).toEqual(['secondRecording', 'gap']);
    expect(capture.warnings[0]).toMatchObject({ row: 32, repaired: true });
  });

  it('rows with a coarse clock are spread over its step', async () => {
    const { capture } = await seconds(Array.from({ length: 60 }, (_, i) => Math.floor(i / 5)));
    expect(at(capture)).toEqual(Array.from({ length: 60 }, (_, i) => expect.closeTo(i / 5, 9)));
    expect(capture.warnings.find(({ id }) => id === 'duplicateTimes')).toMatchObject({
      row: 3,
      count: 48,
      repaired: true,
    });
  });

  it('a gap is told with its place and its row, and mended by nothing', async () => {
    const { capture } = await seconds(Array.from({ length: 100 }, (_, i) => (i < 60 ? i / 10 : i / 10 + 7)));
    expect(capture.warnings.find(({ id }) => id === 'gap')).toMatchObject({
      row: 62,
      count: 1,
      repaired: false,
      detail: 'One gap in the recording, the longest of 7.1 s at 5.9 s.',
    });
  });

  it('times are always in order, whatever the file said', async () => {
    const cells = Array.from({ length: 500 }, (_, i) => ((i * 7919) % 1000) / 100);
    const times = at((await seconds(cells)).capture);
    expect(times).toEqual([...times].sort((a, b) => a - b));
    expect(times).toHaveLength(500);
  });
});
