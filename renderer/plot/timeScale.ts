import type { Stretch } from '../../core/windows/window.ts';

/**
 * The one map between time and pixels. Plot, cursor, window edges, hit tests and pictures all use it, so that they can
 * not disagree. Pixels are CSS pixels from the left edge of the stack; `left` is where the paper begins.
 */
export class TimeScale {
  readonly startS: number;
  readonly endS: number;
  readonly left: number;
  readonly width: number;

  /** A stretch without length or a paper without width would divide by zero: both are a fault of the caller. */
  constructor(stretch: Stretch, left: number, width: number) {
    if (!(stretch.endS > stretch.startS))
      throw new RangeError('A time scale needs a stretch that ends after it starts.');
    if (!(width > 0)) throw new RangeError('A time scale needs a width.');
    this.startS = stretch.startS;
    this.endS = stretch.endS;
    this.left = left;
    this.width = width;
  }

  get secondsPerPixel(): number {
    return (this.endS - this.startS) / this.width;
  }

  /** Pixel of a time; times outside the stretch lie outside the paper. */
  xOf(timeS: number): number {
    return this.left + ((timeS - this.startS) / (this.endS - this.startS)) * this.width;
  }

  /** Time of a pixel; pixels beside the paper give times outside the stretch. */
  timeOf(x: number): number {
    return this.startS + ((x - this.left) / this.width) * (this.endS - this.startS);
  }

  /** The nearest pixel that lies on the paper. */
  clampX(x: number): number {
    return Math.min(this.left + this.width, Math.max(this.left, x));
  }
}
