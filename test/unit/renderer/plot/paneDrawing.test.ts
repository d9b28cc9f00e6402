import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { Stretch } from '../../../../core/windows/window.ts';
import { FrameScheduler } from '../../../../renderer/plot/frame.ts';
import { PaneDrawing, type PaneSight, type PaneWish } from '../../../../renderer/plot/paneDrawing.ts';
import { paneModel } from '../../../../renderer/plot/paneModel.ts';
import { PlotSurface } from '../../../../renderer/plot/plotSurface.ts';
import { Stage } from '../../../../renderer/plot/stage.ts';
import { TimeScale } from '../../../../renderer/plot/timeScale.ts';
import type { PaneLayout } from '../../../../renderer/plot/traceStackProps.ts';
import { type InventedChannel, syntheticCapture, syntheticSource } from '../../../support/syntheticSource.ts';

/** Ten samples a second for 100 s that rise from 0 to 1, and nothing from 40 to 60 s. */
const ramp: InventedChannel = {
  id: 'ramp',
  name: 'ramp',
  role: 'other',
  bank: null,
  sensor: null,
  ...rampSamples(),
  steps: false,
  gapS: 1,
};
const capture = syntheticCapture('ramp', [ramp]);
const source = syntheticSource([ramp]);

beforeEach(() => {
  vi.restoreAllMocks();
  vi.stubGlobal('devicePixelRatio', 1);
});

function wishFor(scale: PaneLayout['scale']): PaneWish {
  const pane = { id: 'p', channelIds: ['ramp'], share: 1, scale };
  const setting = { capture, source, theme: 'light', units: undefined, guides: false, ghosts: [] } as const;
  return paneModel(pane, setting).wish;
}

function paneWith(scale: PaneLayout['scale'], visible: Stretch) {
  const stage = new Stage(visible, 's', new FrameScheduler(() => undefined));
  stage.resize(1100);
  const sights: PaneSight[] = [];
  const host: HTMLElement = Object.create(null);
  const style = { leftGutter: 64, margin: 7, family: 'serif', timeGrid: true, valueLabels: true };
  const drawing = new PaneDrawing(stage, host, style, wishFor(scale), (sight) => sights.push(sight));
  return { stage, drawing, sights };
}

/** Lets the core answer. */
async function answered(): Promise<void> {
  for (let turn = 0; turn < 20; turn++) await Promise.resolve();
}

describe('the vertical scale of a pane', () => {
  it('is fixed for the quantity at every zoom', async () => {
    const { stage, drawing } = paneWith({ kind: 'quantity' }, { startS: 0, endS: 100 });
    await answered();
    const whole = drawing.range;
    stage.look({ startS: 10, endS: 12 }, false);
    await answered();
    expect(drawing.range).toEqual(whole);
  });

  it('by hand is what was typed', () => {
    expect(paneWith({ kind: 'hand', low: -3, high: 7 }, { startS: 0, endS: 10 }).drawing.range).toEqual([-3, 7]);
  });

  it('fitted follows a zoom and never jumps while panning', async () => {
    const { stage, drawing } = paneWith({ kind: 'auto' }, { startS: 0, endS: 20 });
    await answered();
    const [low, high] = drawing.range;
    expect(low).toBeLessThanOrEqual(0);
    expect(high).toBeGreaterThanOrEqual(0.2);
    expect(high).toBeLessThan(0.3);
    for (let startS = 1; startS <= 15; startS++) {
      stage.look({ startS, endS: startS + 20 }, false);
      await answered();
      expect(drawing.range).toEqual([low, high]);
    }
    stage.look({ startS: 15, endS: 20 }, false);
    await answered();
    expect(drawing.range[0]).toBeGreaterThan(0.1);
  });

  it('fitted is fitted again when it is chosen again', async () => {
    const { stage, drawing } = paneWith({ kind: 'auto' }, { startS: 0, endS: 20 });
    await answered();
    stage.look({ startS: 15, endS: 35 }, false);
    await answered();
    const before = drawing.range;
    drawing.update(wishFor({ kind: 'auto' }));
    expect(drawing.range).not.toEqual(before);
  });
});

describe('the canvas of a pane', () => {
  const noTicks = { ticks: [], fine: [], labels: [] };
  const scale = new TimeScale({ startS: 0, endS: 10 }, 64, 1000);

  it('is first drawn with the first traces, and from then on whenever it is told', async () => {
    const drawn = vi.spyOn(PlotSurface.prototype, 'draw').mockReturnValue(undefined);
    const shown = vi.spyOn(PlotSurface.prototype, 'show');
    const { stage, drawing } = paneWith({ kind: 'quantity' }, { startS: 0, endS: 10 });
    drawing.draw(scale, noTicks);
    expect(drawn).not.toHaveBeenCalled();
    await answered();
    drawing.draw(scale, noTicks);
    expect(shown.mock.lastCall?.[0].traces).toHaveLength(1);
    stage.look({ startS: 45, endS: 55 }, false);
    drawing.draw(scale, noTicks); // the next view is still asked for
    expect(drawn).toHaveBeenCalledTimes(2);
  });

  it('is drawn with its axes where the traces do not come', async () => {
    const drawn = vi.spyOn(PlotSurface.prototype, 'draw').mockReturnValue(undefined);
    const views = vi.spyOn(source, 'views').mockRejectedValue(new Error('gone'));
    const { drawing } = paneWith({ kind: 'quantity' }, { startS: 0, endS: 10 });
    await answered();
    views.mockRestore();
    drawing.draw(scale, noTicks);
    expect(drawn).toHaveBeenCalledTimes(1);
  });
});

describe('what a pane says where there is no trace to see', () => {
  it('is that nothing was recorded there, and nothing once there is', async () => {
    const { stage, sights } = paneWith({ kind: 'quantity' }, { startS: 0, endS: 100 });
    await answered();
    stage.look({ startS: 45, endS: 55 }, false);
    await answered();
    stage.look({ startS: 35, endS: 55 }, false);
    await answered();
    expect(sights).toEqual(['noSamples', 'drawn']);
  });

  it('is that the trace lies above or below a scale by hand', async () => {
    const { drawing, sights } = paneWith({ kind: 'hand', low: 5, high: 6 }, { startS: 0, endS: 30 });
    await answered();
    drawing.update(wishFor({ kind: 'hand', low: -6, high: -5 }));
    drawing.update(wishFor({ kind: 'quantity' }));
    expect(sights).toEqual(['below', 'above', 'drawn']);
  });

  it('is nothing while the view is still asked for', async () => {
    const { stage, sights } = paneWith({ kind: 'quantity' }, { startS: 0, endS: 10 });
    await answered();
    stage.look({ startS: 45, endS: 55 }, false);
    expect(sights).toEqual([]);
  });
});

function rampSamples(): { timesS: Float64Array; values: Float32Array } {
  const all = Array.from({ length: 1001 }, (_, i) => i / 10);
  const kept = all.filter((timeS) => timeS <= 40 || timeS >= 60);
  return { timesS: Float64Array.from(kept), values: Float32Array.from(kept, (timeS) => timeS / 100) };
}
