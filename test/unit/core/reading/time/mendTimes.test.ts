import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RepairId } from '../../../../../core/capture/repairs.ts';
import { mendTimes } from '../../../../../core/reading/time/mendTimes.ts';
import { simplestStep } from '../../../../../core/reading/time/simplestStep.ts';
import { spreadEqualTimes } from '../../../../../core/reading/time/spreadEqualTimes.ts';
import { startClockOf } from '../../../../../core/reading/time/startClockOf.ts';
import { roundTime, timeBaseOf } from '../../../../../core/reading/time/timeBaseOf.ts';
import { TimeStore } from '../../../../../core/reading/time/timeStore.ts';
import { type ClockTurn, DAY, HOUR } from '../../../../../core/reading/time/unwrapClock.ts';

const mend = (
  cells: readonly number[],
  clock: ClockTurn | null = null,
  asWritten: readonly RepairId[] = [],
  coarse = false,
) => mendTimes(Float64Array.from(cells), { clock, coarse, asWritten: new Set(asWritten), rowOf: (row) => row + 1 });

describe('mending times', () => {
  it('keeps times that are in order as they are, and says nothing', () => {
    expect(mend([0, 0.1, 0.1, 0.4])).toEqual({ timesS: Float64Array.of(0, 0.1, 0.1, 0.4), order: null, warnings: [] });
  });

  it('gives ascending times and every row once, whatever the file said', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { maxLength: 200 }),
        fc.constantFrom(null, DAY, HOUR),
        (cells, clock) => {
          const { timesS, order } = mend(cells, clock);
          expect(timesS.length).toBe(cells.length);
          for (let i = 1; i < timesS.length; i++) expect(timesS[i]).toBeGreaterThanOrEqual(timesS[i - 1] ?? 0);
          if (order !== null) expect([...order].sort((a, b) => a - b)).toEqual(cells.map((_, i) => i));
        },
      ),
    );
  });

  it('tells many recordings in one sentence', () => {
    const cells = Array.from({ length: 200 }, (_, i) => (i % 50) / 10);
    const { warnings } = mend(cells);
    expect(warnings).toEqual([
      {
        id: 'secondRecording',
        detail: 'Time starts again 3 times, so the file holds 4 recordings; each was put 10 s behind the one before.',
        row: 51,
        count: 3,
        repaired: true,
      },
    ]);
  });

  it('takes a clock past midnight, and back before it when a late row comes', () => {
    const { timesS } = mend([86_398, 86_399, 0, 86_399.5, 1, 2], DAY);
    expect([...timesS]).toEqual([86_398, 86_399, 86_399.5, 86_400, 86_401, 86_402]);
  });
});

describe('spreading equal times', () => {
  it('shares the step to the next time among the rows that carry one; a pair keeps the step of the run before', () => {
    const timesS = Float64Array.of(0, 0, 0, 0, 1, 1, 2);
    expect(spreadEqualTimes(timesS, (i) => i, false)).toMatchObject({ count: 4, row: 1 });
    expect([...timesS]).toEqual([0, 0.25, 0.5, 0.75, 1, 1.25, 2]);
  });

  it('spreads rows before a silence over a usual tick of the clock, and not over the silence', () => {
    const timesS = Float64Array.of(0, 0, 0, 3, 3, 3, 6, 6, 6, 36, 36, 36);
    spreadEqualTimes(timesS, (i) => i, false);
    expect([...timesS]).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 36, 37, 38]);
  });

  it('leaves different times alone', () => {
    const timesS = Float64Array.of(0, 0.1, 0.3);
    expect(spreadEqualTimes(timesS, () => 1, false)).toBeNull();
    expect([...timesS]).toEqual([0, 0.1, 0.3]);
  });

  it('keeps times in order, whatever they are', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 20 }), { maxLength: 60 }), (cells) => {
        const timesS = Float64Array.from(cells.sort((a, b) => a - b));
        spreadEqualTimes(timesS, () => 1, false);
        for (let i = 1; i < timesS.length; i++) expect(timesS[i]).toBeGreaterThanOrEqual(timesS[i - 1] ?? 0);
      }),
    );
  });
});

describe('times while they are read', () => {
  const store = (cells: readonly number[], block: number, perSecond = 1) => {
    const times = new TimeStore(perSecond, 0);
    for (let at = 0; at < cells.length; at += block) {
      const stage = Float64Array.from(cells.slice(at, at + block));
      times.take(stage, 0, 1, stage.length);
    }
    return times.finish();
  };

  it('are described where they are regular, whatever the blocks', () => {
    const cells = Array.from({ length: 1000 }, (_, i) => Number((12.5 + i * 0.001).toFixed(3)));
    for (const block of [3, 64, 999, 5000]) {
      expect(store(cells, block)).toEqual({ kind: 'regular', start: 12.5, step: 0.001, length: 1000 });
    }
  });

  it('are listed as they were read from the first one that is not where the step puts it', () => {
    const cells = Array.from({ length: 1000 }, (_, i) =>
      Number((12.5 + i * 0.001 + (i === 700 ? 0.0005 : 0)).toFixed(4)),
    );
    for (const block of [64, 333, 5000]) {
      const stored = store(cells, block);
      expect(stored.kind === 'listed' ? [...stored.times] : []).toEqual(cells);
    }
  });

  it('need more than two to be regular', () => {
    expect(store([0, 1], 10)).toMatchObject({ kind: 'listed' });
    expect(store([0, 0, 0], 10)).toMatchObject({ kind: 'listed' });
  });
});

describe('a base of times', () => {
  it('is counted from its start without the noise of a subtraction', () => {
    const base = timeBaseOf(Float64Array.of(12.3, 12.4, 12.6), 12.3);
    expect(base).toEqual({ kind: 'listed', timesS: Float64Array.of(0, 0.1, 0.3) });
    expect(roundTime(0.1 + 0.2)).toBe(0.3);
  });

  it.each([
    [0.1000000009, 80, 1e-6, 0.1],
    [0.033333333, 3, 1e-9, 0.0333333333],
    [1 / 3, 10, 1e-12, 1 / 3],
  ])('a mean step of %f over %i is %f', (mean, count, allowed, step) => {
    expect(simplestStep(mean, count, allowed)).toBeCloseTo(step, 9);
  });
});

describe('the clock at the start', () => {
  const epoch = { kind: 'number', column: 0, times: 1, over: 1, epoch: true, words: '', guess: null } as const;

  it('is ISO 8601, for any moment what the platform says', () => {
    fc.assert(
      fc.property(fc.integer({ min: -2_000_000_000_000, max: 4_000_000_000_000 }), (ms) => {
        const expected = new Date(ms).toISOString().replace(/\.?0+Z$/, 'Z');
        const own = startClockOf(epoch, ms / 1000, '');
        expect(own?.replace(/(:\d\d)\.?0*Z$/, '$1Z')).toBe(expected.replace(/(:\d)Z$/, '$10Z'));
      }),
    );
  });
});
