// What a turn of the wheel, a two-finger stroke or a pinch over a pane means. A pinch arrives as a wheel event with the
// Ctrl key set, as in every current browser engine.

export interface WheelTurn {
  readonly deltaX: number;
  readonly deltaY: number;
  /** 0 pixels, 1 lines, 2 pages, as in the DOM. */
  readonly deltaMode: number;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
}

export type WheelDeed =
  /** Length of the visible stretch times `factor`, around the pointer. */
  | { readonly kind: 'zoom'; readonly factor: number }
  /** Later by this many pixels; negative is earlier. */
  | { readonly kind: 'pan'; readonly pixels: number }
  /** Height of the value scale times `factor`, around the pointer. */
  | { readonly kind: 'value'; readonly factor: number };

const LINE_PX = 16;
const PAGE_PX = 400;
/** One notch of a usual wheel (100 px) zooms by a fifth. */
const ZOOM_PER_PX = Math.log(1.2) / 100;
/** A pinch sends a few pixels at a time. */
const PINCH_PER_PX = 0.01;
const PINCH_UP_TO_PX = 50;
/** One event never zooms further than this, however fast the wheel spins. */
const MOST_PER_EVENT = Math.log(3);

/** The deed for one event, or null where nothing moved. `plain` is what the wheel does without a modifier. */
export function wheelDeed(turn: WheelTurn, plain: 'zoom' | 'pan'): WheelDeed | null {
  const unit = turn.deltaMode === 1 ? LINE_PX : turn.deltaMode === 2 ? PAGE_PX : 1;
  const across = turn.deltaX * unit;
  const along = turn.deltaY * unit;
  if (across === 0 && along === 0) return null;
  if (turn.altKey) return { kind: 'value', factor: factorOf(along === 0 ? across : along, ZOOM_PER_PX) };
  if (turn.ctrlKey || turn.metaKey) {
    const pinch = turn.ctrlKey && Math.abs(along) < PINCH_UP_TO_PX;
    return { kind: 'zoom', factor: factorOf(along, pinch ? PINCH_PER_PX : ZOOM_PER_PX) };
  }
  if (turn.shiftKey) return { kind: 'pan', pixels: along === 0 ? across : along };
  if (Math.abs(across) > Math.abs(along)) return { kind: 'pan', pixels: across };
  return plain === 'zoom' ? { kind: 'zoom', factor: factorOf(along, ZOOM_PER_PX) } : { kind: 'pan', pixels: along };
}

function factorOf(pixels: number, perPixel: number): number {
  return Math.exp(Math.min(MOST_PER_EVENT, Math.max(-MOST_PER_EVENT, pixels * perPixel)));
}
