// What may be seen: the whole capture at most, five samples at least, and never past an end.

import type { CaptureOutline } from '../../core/bridge/coreMessages.ts';
import type { Stretch } from '../../core/windows/window.ts';

/** Samples of the fastest shown channel that stay in view at the closest zoom. */
const FEWEST_SAMPLES = 5;
/** Closest zoom where no channel says how fast it is, s. */
const LEAST_SPAN_S = 0.01;

export interface ZoomLimits extends Stretch {
  readonly leastSpanS: number;
}

/** Limits for a capture with these channels in view; unknown channels are passed over. */
export function zoomLimits(capture: CaptureOutline, shownChannelIds: readonly string[]): ZoomLimits {
  const shown = new Set(shownChannelIds);
  let fastestHz = 0;
  for (const { id, facts } of capture.channels) {
    if (shown.has(id) && facts.medianRateHz > fastestHz) fastestHz = facts.medianRateHz;
  }
  const endS = capture.durationS > 0 ? capture.durationS : 1;
  const leastSpanS = fastestHz > 0 ? FEWEST_SAMPLES / fastestHz : LEAST_SPAN_S;
  return { startS: 0, endS, leastSpanS: Math.min(leastSpanS, endS) };
}

/** The nearest stretch that is allowed: its length first, then its place. */
export function clampStretch(stretch: Stretch, limits: ZoomLimits): Stretch {
  const whole = limits.endS - limits.startS;
  const spanS = Math.min(whole, Math.max(limits.leastSpanS, stretch.endS - stretch.startS));
  if (spanS >= whole) return { startS: limits.startS, endS: limits.endS };
  const middle = (stretch.startS + stretch.endS) / 2;
  const grown = spanS === stretch.endS - stretch.startS ? stretch.startS : middle - spanS / 2;
  const startS = Math.min(limits.endS - spanS, Math.max(limits.startS, grown));
  return { startS, endS: startS + spanS };
}

/**
 * `visible` with its length times `factor` (under 1 is closer), the sample at `anchorS` staying where it is as long as
 * no end of the capture is in the way.
 */
export function zoomAt(visible: Stretch, anchorS: number, factor: number, limits: ZoomLimits): Stretch {
  const span = visible.endS - visible.startS;
  const whole = limits.endS - limits.startS;
  const spanS = Math.min(whole, Math.max(limits.leastSpanS, span * factor));
  const share = (anchorS - visible.startS) / span;
  const startS = anchorS - share * spanS;
  return clampStretch({ startS, endS: startS + spanS }, limits);
}

/** `visible` moved by `shiftS`, stopped by the ends of the capture without changing its length. */
export function panBy(visible: Stretch, shiftS: number, limits: ZoomLimits): Stretch {
  return clampStretch({ startS: visible.startS + shiftS, endS: visible.endS + shiftS }, limits);
}

/** `visible` moved no further than needed to show `timeS` with a tenth of its length around it. */
export function showTime(visible: Stretch, timeS: number, limits: ZoomLimits): Stretch {
  if (timeS >= visible.startS && timeS <= visible.endS) return visible;
  const margin = (visible.endS - visible.startS) / 10;
  const shiftS = timeS < visible.startS ? timeS - margin - visible.startS : timeS + margin - visible.endS;
  return panBy(visible, shiftS, limits);
}

export function sameStretch(one: Stretch, other: Stretch): boolean {
  return one.startS === other.startS && one.endS === other.endS;
}
