import type { Capture } from '../capture/capture.ts';
import type { TraceView } from '../capture/traceView.ts';
import { fitOf } from '../measures/fitOf.ts';
import { cutWindow, rearChannel } from '../measures/windowData.ts';
import type { ModelTrace } from '../model/modelTrace.ts';
import { banksToJudge } from '../windows/banksToJudge.ts';
import type { CaptureWindow } from '../windows/window.ts';

const WORDS = { fitted: 'model, as fitted', good: 'good converter', dead: 'dead converter' } as const;

/**
 * What the rear sensor of each bank of a window would show by the fitted model: as fitted, behind a good converter and
 * behind a dead one, under the same front signal. Voltages in V over times in capture seconds. Empty where no model can
 * be followed wave by wave: without both sensors, or with values that come too slowly.
 */
export function modelTraces(capture: Capture, window: CaptureWindow): readonly ModelTrace[] {
  const banks = window.bank === null ? banksToJudge(capture) : [window.bank];
  return banks.flatMap((bank) => {
    const rear = rearChannel(capture, bank);
    const ghosts = fitOf(cutWindow(capture, { ...window, bank }, bank)).fit?.ghosts ?? null;
    if (rear === null || ghosts === null) return [];
    return (['good', 'dead', 'fitted'] as const).map((id) => ({
      id,
      words: WORDS[id],
      overChannelId: rear.id,
      view: viewOf(rear.id, ghosts.timesS, ghosts[id]),
    }));
  });
}

function viewOf(channelId: string, timesS: Float64Array, volts: Float64Array): TraceView {
  const values = Float32Array.from(volts);
  return {
    channelId,
    kind: 'samples',
    startS: timesS[0] ?? 0,
    endS: timesS[timesS.length - 1] ?? 0,
    timesS: Float64Array.from(timesS),
    low: values,
    high: values,
    steps: false,
    gapS: Number.POSITIVE_INFINITY,
  };
}
