import { describe, expect, it } from 'vitest';
import type { CursorValue } from '../../../../core/capture/traceView.ts';
import { FrameScheduler } from '../../../../renderer/plot/frame.ts';
import { CaptureReadings, PairedReadings } from '../../../../renderer/plot/readings.ts';
import { Stage } from '../../../../renderer/plot/stage.ts';
import type { TraceSource } from '../../../../renderer/plot/traceStackProps.ts';

/** A core that writes down where it was asked, and answers when it is let. */
function slowCore() {
  const asked: number[] = [];
  const answers: (() => Promise<void>)[] = [];
  const source: TraceSource = {
    views: async () => [],
    valuesAt: (ids, timeS) =>
      new Promise((resolve) => {
        asked.push(timeS);
        answers.push(async () => {
          resolve(ids.map((channelId): CursorValue => ({ channelId, sampleS: Math.floor(timeS), value: timeS })));
          for (let turn = 0; turn < 8; turn++) await Promise.resolve();
        });
      }),
    nextStop: async () => null,
    describe: async () => [],
  };
  return { source, asked, answers };
}

function still(): Stage {
  return new Stage({ startS: 0, endS: 100 }, 's', new FrameScheduler(() => undefined));
}

const ids = ['c0', 'c1'];

describe('the values under the cursor', () => {
  it('come with the time of their own sample', async () => {
    const stage = still();
    const core = slowCore();
    const readings = new CaptureReadings(stage, { source: core.source, channelIds: ids, within: null });
    stage.setCursor(12.5);
    await core.answers[0]?.();
    expect(readings.at('c1')).toEqual({ channelId: 'c1', sampleS: 12, value: 12.5 });
    expect(readings.at('c9')).toBeNull();
    expect(readings.atSecondCursor('c1')).toBeNull();
  });

  it('are asked for one at a time; of the places passed meanwhile only the last is read', async () => {
    const stage = still();
    const core = slowCore();
    const readings = new CaptureReadings(stage, { source: core.source, channelIds: ids, within: null });
    for (const timeS of [1, 2, 3, 4]) stage.setCursor(timeS);
    expect(core.asked).toEqual([1]);
    await core.answers[0]?.();
    expect(core.asked).toEqual([1, 4]);
    await core.answers[1]?.();
    expect(readings.at('c0')?.value).toBe(4);
  });

  it('are gone at once with the cursor, even if an older answer comes later', async () => {
    const stage = still();
    const core = slowCore();
    const readings = new CaptureReadings(stage, { source: core.source, channelIds: ids, within: null });
    stage.setCursor(5);
    stage.setCursor(null);
    await core.answers[0]?.();
    expect(readings.at('c0')).toBeNull();
  });

  it('of two sides of a comparison are kept apart and read in the time of each', async () => {
    const stage = still();
    const [one, other] = [slowCore(), slowCore()];
    const first = new CaptureReadings(stage, { source: one.source, channelIds: ids, within: null });
    const within = { startS: 300, endS: 320 };
    const second = new CaptureReadings(stage, { source: other.source, channelIds: ids, within });
    second.setShift(-300);
    const both = new PairedReadings(first, second);
    stage.setCursor(7.5);
    await one.answers[0]?.();
    await other.answers[0]?.();
    expect(both.at('first c0')?.value).toBe(7.5);
    expect(other.asked).toEqual([307.5]);
    expect(both.at('second c0')).toEqual({ channelId: 'c0', sampleS: 7, value: 307.5 });
    // The second side's window ends 20 s after its start.
    stage.setCursor(25);
    expect(both.at('second c0')).toBeNull();
  });

  it('tells those who listen, and nobody after they left', async () => {
    const stage = still();
    const core = slowCore();
    const readings = new CaptureReadings(stage, { source: core.source, channelIds: ids, within: null });
    let told = 0;
    const leave = readings.onChange(() => told++);
    stage.setCursor(5);
    await core.answers[0]?.();
    expect(told).toBe(1);
    leave();
    stage.setCursor(6);
    await core.answers[1]?.();
    expect(told).toBe(1);
  });
});
