// Files with any mixture of late rows, jumps of the clock, second recordings, coarse clocks and midnights, read with any
// repairs undone. The oracle for undone repairs is the file itself: its own times, sorted.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Capture } from '../../core/capture/capture.ts';
import { REPAIR_IDS, type RepairId, repairOf } from '../../core/capture/repairs.ts';
import { withAsWritten } from '../../core/record/asWritten.ts';
import { readAsWritten, samplesOf } from '../support/readAsWritten.ts';
import { readText } from '../support/readText.ts';

/** Hundredths of a second, so that sums are exact. */
const stretch = fc.record({
  from: fc.integer({ min: 0, max: 6000 }),
  again: fc.boolean(),
  rows: fc.integer({ min: 12, max: 40 }),
  step: fc.constantFrom(1, 5, 10, 25),
  coarse: fc.constantFrom(1, 1, 1, 100),
  late: fc.array(fc.nat({ max: 39 }), { maxLength: 3 }),
});

/** Times of a file, s: stretches that begin anywhere, some again where the first began, some stamped by a coarse clock. */
const anyTimes = fc.array(stretch, { minLength: 1, maxLength: 3 }).map((stretches) => {
  const start = stretches[0]?.from ?? 0;
  return stretches.flatMap(({ from, again, rows, step, coarse, late }) => {
    const begin = again ? start : from;
    const ticks = Array.from({ length: rows }, (_, i) => Math.floor((begin + i * step) / coarse) * coarse);
    for (const at of late) {
      const [here, next] = [ticks[at], ticks[at + 1]];
      if (here === undefined || next === undefined) continue;
      ticks[at] = next;
      ticks[at + 1] = here;
    }
    return ticks.map((tick) => tick / 100);
  });
});

/** A column that never changes is no time. */
const fileTimes = anyTimes.filter((times) => new Set(times).size > 3);

const undone = fc.subarray([...REPAIR_IDS]);

/** Each row is known by its engine speed. */
const textOf = (times: readonly (number | string)[]) =>
  `${typeof times[0] === 'string' ? 'Time' : 'Time (s)'},RPM\n${times.map((time, i) => `${time},${1000 + i}\n`).join('')}`;

const rowsOf = (capture: Capture) => samplesOf(capture).map(([timeS, value]) => [timeS, value - 1000] as const);
const countOf = ({ warnings }: Capture, id: RepairId) => warnings.find((warning) => warning.id === id)?.count ?? 0;

/** What a clock writes at each of so many seconds of a day and the next. */
const clockCell = (s: number) =>
  [Math.floor(s / 3600) % 24, Math.floor(s / 60) % 60, s % 60].map((part) => String(part).padStart(2, '0')).join(':');

describe('undone repairs, whatever the file', () => {
  it('repaired again, the capture is the one of before, bit for bit', async () => {
    await fc.assert(
      fc.asyncProperty(fileTimes, undone, async (times, ids) => {
        const text = textOf(times);
        const before = (await readText(text)).capture;
        const { headerKey } = before.layout;
        const changed = withAsWritten(null, headerKey, ids);
        await readText(text, { choice: changed });
        const again = await readText(text, { choice: withAsWritten(changed, headerKey, []) });
        expect(again.capture).toEqual(before);
        // What did not arise in the file is undone without a trace.
        const idle = ids.filter((id) => countOf(before, id) === 0);
        expect(await readAsWritten(text, idle)).toEqual(before);
      }),
      { numRuns: 60 },
    );
  });

  it('no row changes its value or stands twice; times ascend; what is missing is counted', async () => {
    await fc.assert(
      fc.asyncProperty(fileTimes, undone, async (times, ids) => {
        const capture = await readAsWritten(textOf(times), ids);
        const rows = rowsOf(capture);
        const left = ids.includes('outOfOrder') ? countOf(capture, 'outOfOrder') : 0;
        expect(rows).toHaveLength(times.length - left);
        expect(new Set(rows.map(([, row]) => row)).size).toBe(rows.length);
        for (const [, row] of rows) expect(Number.isInteger(row) && row >= 0 && row < times.length).toBe(true);
        for (let i = 1; i < rows.length; i++) expect(rows[i]?.[0]).toBeGreaterThanOrEqual(rows[i - 1]?.[0] ?? 0);
        expect(rows[0]?.[0]).toBe(0);
        for (const repair of capture.warnings.flatMap((warning) => repairOf(warning) ?? []))
          expect(repair.made).toBe(!ids.includes(repair.id));
      }),
      { numRuns: 120 },
    );
  });

  it('without any repair of the clock and of equal times, every row stands at its own time', async () => {
    const all: RepairId[] = ['clockPastMidnight', 'secondRecording', 'clockJumpedBack', 'duplicateTimes'];
    await fc.assert(
      fc.asyncProperty(fileTimes, async (times) => {
        const capture = await readAsWritten(textOf(times), all);
        const first = Math.min(...times);
        const own = times.map((time, row) => [time - first, row] as const);
        const sorted = (rows: readonly (readonly [number, number])[]) =>
          [...rows].sort((a, b) => Math.round((a[0] - b[0]) * 1000) || a[1] - b[1]);
        expect(sorted(rowsOf(capture))).toEqual(sorted(own).map(([timeS, row]) => [expect.closeTo(timeS, 9), row]));
      }),
      { numRuns: 120 },
    );
  });

  it('a clock past midnight stands as it was written', async () => {
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: 30 }), fc.integer({ min: 20, max: 60 }), async (before, after) => {
        const seconds = Array.from({ length: before + after }, (_, i) => 86_400 - before + i);
        const capture = await readAsWritten(textOf(seconds.map(clockCell)), ['clockPastMidnight']);
        const morning = seconds.slice(before).map((s, i) => [s - 86_400, before + i]);
        const evening = seconds.slice(0, before).map((s, i) => [s, i]);
        expect(rowsOf(capture)).toEqual([...morning, ...evening]);
      }),
      { numRuns: 30 },
    );
  });
});
