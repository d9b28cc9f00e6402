// Repairs of the times that a person has undone. Times and values were worked by hand from the rows that stand here.

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Capture, findChannel } from '../../../../core/capture/capture.ts';
import { buildPyramid } from '../../../../core/capture/pyramid.ts';
import { REPAIR_IDS, type RepairId, repairOf } from '../../../../core/capture/repairs.ts';
import { viewOf } from '../../../../core/capture/viewOf.ts';
import { withAsWritten } from '../../../../core/record/asWritten.ts';
import { scoreCapture } from '../../../../core/scoreCapture.ts';
import { readAsWritten, samplesOf } from '../../../support/readAsWritten.ts';
import { readText } from '../../../support/readText.ts';
import { type MdfGroup, writeMdf4 } from '../../../support/writeMdf4.ts';

/** A file with these times; its engine speed counts the rows from 800 on. */
const file = (cells: readonly string[]) => `Time (s),RPM\n${cells.map((cell, i) => `${cell},${800 + i}\n`).join('')}`;

/** `count` times a tenth of a second apart, from `from` on. */
const tenths = (from: number, count: number) => Array.from({ length: count }, (_, i) => (from + i / 10).toFixed(1));

const rowsOf = (capture: Capture) => samplesOf(capture).map(([, value]) => value - 800);
const timesOf = (capture: Capture) => samplesOf(capture).map(([timeS]) => timeS);
const told = ({ warnings }: Capture) => warnings.flatMap((warning) => repairOf(warning) ?? []);
const wordsOf = ({ warnings }: Capture, id: RepairId) => warnings.filter((warning) => warning.id === id);

describe('past midnight, undone', () => {
  // 23:59:58 to 00:00:03, a second apart: rows 0 and 1 before midnight, 2 to 5 behind it.
  const clock = 'Time,RPM\n23:59:58,800\n23:59:59,801\n00:00:00,802\n00:00:01,803\n00:00:02,804\n00:00:03,805\n';

  it('the clock stands as it was written, so what came after midnight comes first', async () => {
    expect(timesOf((await readText(clock)).capture)).toEqual([0, 1, 2, 3, 4, 5]);
    const capture = await readAsWritten(clock, ['clockPastMidnight']);
    expect(rowsOf(capture)).toEqual([2, 3, 4, 5, 0, 1]);
    expect(timesOf(capture)).toEqual([0, 1, 2, 3, 86_398, 86_399]);
    expect(capture.startClock).toBe('00:00:00');
    expect(wordsOf(capture, 'clockPastMidnight')).toEqual([
      {
        id: 'clockPastMidnight',
        detail:
          'The clock passed midnight; its times stand as it wrote them, so the rows after midnight lie before the others.',
        row: 4,
        count: 1,
        repaired: false,
      },
    ]);
    expect(told(capture)).toEqual([{ id: 'clockPastMidnight', made: false }]);
  });
});

describe('a jump back of the clock, undone', () => {
  // 50.0 to 54.9, then a clock that was set back to 53.0: rows 30 and 50 both say 53.0, and so on to 49 and 69 (54.9).
  const text = file([...tenths(50, 50), ...tenths(53, 30)]);

  it('rows stand at the times of the file, among those before', async () => {
    // Joined: row 50 comes a tenth behind row 49.
    expect(timesOf((await readText(text)).capture)[50]).toBeCloseTo(5, 9);
    const capture = await readAsWritten(text, ['clockJumpedBack']);
    const first = Array.from({ length: 30 }, (_, i) => i);
    const both = Array.from({ length: 20 }, (_, i) => [30 + i, 50 + i]).flat();
    const last = Array.from({ length: 10 }, (_, i) => 70 + i);
    expect(rowsOf(capture)).toEqual([...first, ...both, ...last]);
    expect(timesOf(capture).slice(29, 34)).toEqual([2.9, 3, 3, 3.1, 3.1]);
    expect(capture.durationS).toBe(5.9);
    expect(wordsOf(capture, 'clockJumpedBack')).toMatchObject([
      {
        detail:
          'The clock jumped back by 1.9 s; the rows after it stand at the times the file gives, among those before.',
        row: 52,
        count: 1,
        repaired: false,
      },
    ]);
    // Rows of two stretches that share a time are no coarse clock: nothing else is repaired.
    expect(told(capture)).toEqual([{ id: 'clockJumpedBack', made: false }]);
  });
});

describe('a second recording, undone', () => {
  it('lies over the first at the times of the file', async () => {
    const text = file([...tenths(0, 30), ...tenths(0, 20)]);
    const capture = await readAsWritten(text, ['secondRecording']);
    expect(timesOf(capture).slice(0, 4)).toEqual([0, 0, 0.1, 0.1]);
    expect(rowsOf(capture).slice(0, 4)).toEqual([0, 30, 1, 31]);
    expect(rowsOf(capture).slice(38)).toEqual([19, 49, 20, 21, 22, 23, 24, 25, 26, 27, 28, 29]);
    expect(capture.durationS).toBe(2.9);
    expect(capture.warnings).toMatchObject([
      {
        id: 'secondRecording',
        detail:
          'Time starts again, so the file holds another recording; all stand at the times the file gives, and a window may hold rows of several.',
        row: 32,
        repaired: false,
      },
    ]);
  });

  it('leaves a coarse clock in each recording to its own repair', async () => {
    // Four rows a second, twice: the quarters of each recording, and not eighths of both together.
    const seconds = (count: number) => Array.from({ length: count }, (_, i) => String(Math.floor(i / 4)));
    const capture = await readAsWritten(file([...seconds(40), ...seconds(40)]), ['secondRecording']);
    expect(timesOf(capture).slice(0, 6)).toEqual([0, 0, 0.25, 0.25, 0.5, 0.5]);
    expect(told(capture)).toEqual([
      { id: 'secondRecording', made: false },
      { id: 'duplicateTimes', made: true },
    ]);
  });

  it('and a jump in it that stays joined go their own ways', async () => {
    // 10.0 to 12.9; again from 10.0 to 13.9, where the clock is set back to 12.0 and goes on to 14.4.
    const text = file([...tenths(10, 30), ...tenths(10, 40), ...tenths(12, 25)]);
    const capture = await readAsWritten(text, ['secondRecording']);
    const places = new Map(samplesOf(capture).map(([timeS, value]) => [value - 800, timeS]));
    expect([places.get(0), places.get(30), places.get(69)]).toEqual([0, 0, 3.9]);
    // Behind the jump time goes on from the row before it, a tenth later.
    expect(places.get(70)).toBeCloseTo(4, 9);
    const other = await readAsWritten(text, ['clockJumpedBack']);
    const own = new Map(samplesOf(other).map(([timeS, value]) => [value - 800, timeS]));
    // The second recording begins 10 s behind 2.9, the rows behind the jump two seconds into it.
    expect(own.get(30)).toBeCloseTo(12.9, 9);
    expect(own.get(70)).toBeCloseTo(14.9, 9);
  });
});

describe('equal times, undone', () => {
  it('stay equal, and no rate is told of them', async () => {
    const text = file(Array.from({ length: 60 }, (_, i) => String(Math.floor(i / 5))));
    const capture = await readAsWritten(text, ['duplicateTimes']);
    expect(timesOf(capture)).toEqual(Array.from({ length: 60 }, (_, i) => Math.floor(i / 5)));
    expect(rowsOf(capture)).toEqual(Array.from({ length: 60 }, (_, i) => i));
    expect(capture.channels[0]?.facts.medianRateHz).toBe(0);
    expect(wordsOf(capture, 'duplicateTimes')).toEqual([
      {
        id: 'duplicateTimes',
        detail: '48 rows have the time of the row before; such rows keep it, so several values stand at one moment.',
        row: 3,
        count: 48,
        repaired: false,
      },
    ]);
  });
});

describe('equal times that stay', () => {
  /** A drive whose clock is cut to whole seconds: ten rows a second carry the same time. */
  const coarse = readFileSync('assets/drives/van-before.csv', 'utf8').replaceAll(/^(-?\d+)\.\d+,/gm, '$1,');

  it('are drawn with every peak', async () => {
    const capture = await readAsWritten(coarse, ['duplicateTimes']);
    const channel = findChannel(capture, 'downstreamO2', 1);
    if (channel === null) throw new Error('no rear sensor');
    const view = viewOf(channel, buildPyramid(channel.values), 0, capture.durationS, 100);
    expect([Math.min(...view.low), Math.max(...view.high)]).toEqual([
      Math.fround(channel.facts.min),
      Math.fround(channel.facts.max),
    ]);
  });

  it('let nothing be judged that needs a rate, and give no number that is none', async () => {
    const capture = await readAsWritten(coarse, ['duplicateTimes']);
    const score = scoreCapture(capture, { windows: null, bank: null, thermal: [], troubleCodes: [] });
    expect(score.windows.length).toBeGreaterThan(0);
    expect(score.verdict).toMatchObject({ finding: 'cannotTell' });
    expect(numbersIn(score).filter((value) => !Number.isFinite(value))).toEqual([]);
    const counted = score.windows.flatMap(({ measures }) => measures.filter(({ id }) => id === 'upstreamSwitchHz'));
    expect(counted.map(({ value }) => value)).toEqual(score.windows.map(() => null));
  });
});

function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}

describe('order of time, undone', () => {
  const cells = ['0', '0.1', '0.2', '0.4', '0.3', '0.5', '0.8', '0.7', '0.6', '0.9', '1'];

  it('rows that go back are left out and counted', async () => {
    const capture = await readAsWritten(file(cells), ['outOfOrder']);
    // Row 4 comes after 0.4; rows 7 and 8 come after 0.8.
    expect(rowsOf(capture)).toEqual([0, 1, 2, 3, 5, 6, 9, 10]);
    expect(timesOf(capture)).toEqual([0, 0.1, 0.2, 0.4, 0.5, 0.8, 0.9, 1]);
    expect(capture.channels[0]?.facts).toMatchObject({ finite: 8, min: 800, max: 810 });
    expect(wordsOf(capture, 'outOfOrder')).toEqual([
      {
        id: 'outOfOrder',
        detail: '3 rows go back in time and were left out instead of being put in order; 8 are left.',
        row: 6,
        count: 3,
        repaired: false,
      },
    ]);
  });

  it('a file written newest first has one row that does not go back', async () => {
    const capture = await readAsWritten(file(tenths(0, 50).reverse()), ['outOfOrder']);
    expect(rowsOf(capture)).toEqual([0]);
    expect(wordsOf(capture, 'outOfOrder')).toMatchObject([{ count: 49, repaired: false }]);
  });

  it('the range is that of the rows that are left', async () => {
    const text = `Time (s),RPM\n${tenths(0, 30)
      .map((cell, i) => `${cell},${1000 + i}\n`)
      .join('')}0.5,9999\n3.0,1030\n3.1,1031\n`;
    const capture = await readAsWritten(text, ['outOfOrder']);
    expect(capture.channels[0]?.facts).toMatchObject({ finite: 32, min: 1000, max: 1031 });
  });
});

describe('in every layout', () => {
  it('one row a value', async () => {
    const rows = Array.from(
      { length: 40 },
      (_, i) => `${Math.floor(i / 2)},Engine speed,${800 + i}\n${i},Coolant,${60 + i}\n`,
    );
    const text = `time (s),name,value\n${rows.join('')}`;
    const capture = await readAsWritten(text, ['duplicateTimes']);
    expect(timesOf(capture).slice(0, 4)).toEqual([0, 0, 1, 1]);
    expect(told(capture)).toEqual([{ id: 'duplicateTimes', made: false }]);
  });

  it('a time for every channel', async () => {
    const rows = Array.from({ length: 40 }, (_, i) => `${Math.floor(i / 2)},${800 + i},${i},${60 + i}\n`);
    const text = `Time (s),RPM,Time (s),Coolant (°C)\n${rows.join('')}`;
    const capture = await readAsWritten(text, ['duplicateTimes']);
    expect(timesOf(capture).slice(0, 4)).toEqual([0, 0, 1, 1]);
    expect(told(capture)).toEqual([{ id: 'duplicateTimes', made: false }]);
  });

  it('a log of the diagnostic connector, whose roles stay those of the standard', async () => {
    // Engine speed (0C) is (256 A + B) / 4: 1A F8 is 1726, 27 10 is 2500. SAE J1979.
    const frame = (timeS: string, data: string) => `(${timeS}) can0 7E8#04410C${data}\n`;
    const log = frame('1.0', '1AF8') + frame('1.3', '2710') + frame('1.2', '1AF8') + frame('1.4', '2710');
    expect(samplesOf((await readText(log)).capture).map(([, rpm]) => rpm)).toEqual([1726, 1726, 2500, 2500]);
    const capture = await readAsWritten(log, ['outOfOrder']);
    expect(capture.channels.map(({ role }) => role)).toEqual(['rpm']);
    expect(samplesOf(capture).map(([, rpm]) => rpm)).toEqual([1726, 2500, 2500]);
    expect(told(capture)).toEqual([{ id: 'outOfOrder', made: false }]);
  });

  it('a measurement file', async () => {
    const group: MdfGroup = {
      dataBytes: 16,
      cycles: 12,
      fields: [
        { name: 'time', unit: 's', dataType: 4, bitCount: 64, byteOffset: 0, type: 2 },
        { name: 'Engine speed', unit: '1/min', dataType: 4, bitCount: 64, byteOffset: 8 },
      ],
    };
    const times = [0, 1, 2, 4, 3, 5, 6, 7, 8, 9, 10, 11];
    const records = new Uint8Array(times.length * 16);
    const view = new DataView(records.buffer);
    times.forEach((timeS, i) => {
      view.setFloat64(i * 16, timeS, true);
      view.setFloat64(i * 16 + 8, 800 + i, true);
    });
    const capture = await readAsWritten(writeMdf4({ groups: [group], records }), ['outOfOrder']);
    expect(rowsOf(capture)).toEqual([0, 1, 2, 3, 5, 6, 7, 8, 9, 10, 11]);
    expect(told(capture)).toEqual([{ id: 'outOfOrder', made: false }]);
  });
});

describe('the choice that holds undone repairs', () => {
  const columns = { headerKey: 'k', timeColumn: 0, rateHz: null, columns: [] };

  it('lists each once in one order, and is none at all where nothing was chosen', () => {
    expect(withAsWritten(null, 'k', ['duplicateTimes', 'clockPastMidnight', 'duplicateTimes'])).toEqual({
      headerKey: 'k',
      timeColumn: null,
      rateHz: null,
      columns: [],
      asWritten: ['clockPastMidnight', 'duplicateTimes'],
    });
    expect(withAsWritten(null, 'k', [])).toBeNull();
    expect(withAsWritten({ ...columns, asWritten: ['outOfOrder'] }, 'k', [])).toEqual(columns);
  });

  it('does nothing for a file with another header', async () => {
    const text = file(Array.from({ length: 60 }, (_, i) => String(Math.floor(i / 5))));
    const choice = withAsWritten(null, 'of another file', [...REPAIR_IDS]);
    expect((await readText(text, { choice })).capture).toEqual((await readText(text)).capture);
  });
});
