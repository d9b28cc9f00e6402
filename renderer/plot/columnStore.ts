import type { ColumnSink } from './traceColumns.ts';

/** Bars of one trace, kept from the moment they are placed until they are filled; the room is used again every frame. */
export class ColumnStore implements ColumnSink {
  private parts = new Float64Array(4 * 2048);
  private count = 0;

  get empty(): boolean {
    return this.count === 0;
  }

  clear(): void {
    this.count = 0;
  }

  rect(x: number, y: number, width: number, height: number): void {
    if (4 * this.count === this.parts.length) {
      const larger = new Float64Array(2 * this.parts.length);
      larger.set(this.parts);
      this.parts = larger;
    }
    const at = 4 * this.count++;
    this.parts[at] = x;
    this.parts[at + 1] = y;
    this.parts[at + 2] = width;
    this.parts[at + 3] = height;
  }

  /** Fills every bar by itself: as one path they would be an outline to be sorted, and that is what bars avoid. */
  fill(context: Pick<CanvasRenderingContext2D, 'fillRect'>): void {
    const { parts } = this;
    for (let at = 0; at < 4 * this.count; at += 4) {
      context.fillRect(parts[at] ?? 0, parts[at + 1] ?? 0, parts[at + 2] ?? 0, parts[at + 3] ?? 0);
    }
  }
}
