import type { CursorValue } from '../../core/capture/traceView.ts';
import { questionUnderWay } from './settled.ts';
import type { TraceSource } from './traceStackProps.ts';

/**
 * Reads the values under a cursor. At most one question is under way; of the places the cursor passes meanwhile only
 * the last is asked for.
 */
export class CursorReader {
  private readonly source: TraceSource;
  private readonly channelIds: readonly string[];
  private readonly onValues: (values: readonly CursorValue[]) => void;
  private wanted: number | null = null;
  private nowhere = true;
  private flying = false;
  private closed = false;

  constructor(source: TraceSource, channelIds: readonly string[], onValues: (values: readonly CursorValue[]) => void) {
    this.source = source;
    this.channelIds = channelIds;
    this.onValues = onValues;
  }

  /** Asks for the values at `timeS`; null for a cursor that is nowhere. */
  want(timeS: number | null): void {
    const leaves = timeS === null && !this.nowhere;
    this.wanted = timeS;
    this.nowhere = timeS === null;
    if (leaves) this.onValues([]);
    if (timeS !== null && !this.flying) this.ask();
  }

  close(): void {
    this.closed = true;
    this.wanted = null;
  }

  private ask(): void {
    const timeS = this.wanted;
    if (timeS === null || this.closed) return;
    this.wanted = null;
    this.flying = true;
    const over = questionUnderWay();
    void this.source
      .valuesAt(this.channelIds, timeS)
      .then(
        (values) => {
          if (!this.closed && !this.nowhere) this.onValues(values);
        },
        () => undefined,
      )
      .then(() => {
        this.flying = false;
        this.ask();
        over();
      });
  }
}
