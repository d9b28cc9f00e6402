import { clampStretch, zoomLimits } from '../plot/zoom.ts';
import type { Program } from '../program/program.ts';

/**
 * Keeps the shown capture in sight after it was read differently and became longer or shorter: all of it where all was
 * seen, else the nearest stretch that it has. `beforeS` is how long it was.
 */
export function fitView({ captures, workspace }: Program, captureId: string, beforeS: number): void {
  const summary = captures.getState().held[captureId]?.summary;
  const { captureId: shown, captures: views, look } = workspace.getState();
  const view = views[captureId];
  if (summary === undefined || view === undefined || shown !== captureId || summary.durationS === beforeS) return;
  const limits = zoomLimits(
    summary,
    view.panes.flatMap(({ channelIds }) => channelIds),
  );
  const { startS, endS } = view.visible;
  const whole = startS <= 0 && endS >= beforeS;
  look(whole ? { startS: limits.startS, endS: limits.endS } : clampStretch({ startS, endS }, limits), true);
}
