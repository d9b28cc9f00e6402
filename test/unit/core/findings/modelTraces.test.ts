import { describe, expect, it } from 'vitest';
import { modelTraces } from '../../../../core/findings/modelTraces.ts';
import { suggestWindows } from '../../../../core/windows/suggestWindows.ts';
import { sampleCapture } from '../../../support/sampleCapture.ts';

async function heldTraces(name: string) {
  const capture = await sampleCapture(name);
  const window = suggestWindows(capture).find(({ kind }) => kind === 'hold');
  if (window === undefined) throw new Error(`${name} has no hold`);
  return { capture, window, traces: modelTraces(capture, window) };
}

const spread = (values: Float32Array): number => Math.max(...values) - Math.min(...values);

describe('the traces of the model', () => {
  it('lie over the rear sensor, inside the window, in volts', async () => {
    const { capture, window, traces } = await heldTraces('van-before.csv');
    const rear = capture.channels.find(({ role }) => role === 'downstreamO2');
    expect(traces.map(({ id }) => id)).toEqual(['good', 'dead', 'fitted']);
    for (const { overChannelId, view } of traces) {
      expect(overChannelId).toBe(rear?.id);
      expect(view.startS).toBeGreaterThanOrEqual(window.startS - 1);
      expect(view.endS).toBeLessThanOrEqual(window.endS + 1);
      for (const volts of view.low) expect(volts).toBeGreaterThanOrEqual(-0.1);
      for (const volts of view.high) expect(volts).toBeLessThanOrEqual(1.2);
    }
  });

  it('show a good converter calmer than a dead one under the same front signal', async () => {
    const { traces } = await heldTraces('van-before.csv');
    const [good, dead] = traces;
    expect(spread(good?.view.high ?? new Float32Array(1))).toBeLessThan(
      spread(dead?.view.high ?? new Float32Array(1)) / 2,
    );
  });

  it('come for each bank of a window of the whole engine', async () => {
    const { traces } = await heldTraces('car-two-banks.txt');
    expect(new Set(traces.map(({ overChannelId }) => overChannelId)).size).toBe(2);
  });

  it('are none where values come too slowly to be followed', async () => {
    const { traces } = await heldTraces('van-twin.csv');
    expect(traces).toEqual([]);
  });
});
