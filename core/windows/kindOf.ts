import type { Capture } from '../capture/capture.ts';
import { engineTrack } from './engineTrack.ts';
import { WINDOW_KIND_RULES } from './kinds/index.ts';
import type { CaptureWindow, Stretch, WindowKind } from './window.ts';

/** A marked stretch is of a kind if stretches of that kind cover at least this share of it. */
const COVERED = 0.7;

/**
 * The kind of a stretch that a person marked, from what the engine did in it: the kind that covers most of it, or
 * 'mixed'. A snap or a fuel cut that lies inside makes it one only if it fills most of the stretch.
 */
export function kindOf(capture: Capture, stretch: Stretch): WindowKind {
  const track = engineTrack(capture);
  let best: WindowKind = 'mixed';
  let most = COVERED;
  for (const rule of WINDOW_KIND_RULES) {
    let covered = 0;
    for (const found of rule.find(track, capture))
      covered += Math.max(0, Math.min(found.endS, stretch.endS) - Math.max(found.startS, stretch.startS));
    const share = covered / (stretch.endS - stretch.startS);
    if (share >= most) {
      most = share;
      best = rule.kind;
    }
  }
  return best;
}

/** A window as it is judged: one that was marked by hand, of no kind yet, is of the kind that the engine made it. */
export function withKind(capture: Capture, window: CaptureWindow): CaptureWindow {
  if (window.origin !== 'byHand' || window.kind !== 'mixed') return window;
  return { ...window, kind: kindOf(capture, window) };
}
