import type { CursorValue } from '../../core/capture/traceView.ts';
import { CursorReader } from './cursorReader.ts';
import type { Stage } from './stage.ts';
import type { TraceSource } from './traceStackProps.ts';

/** The values under both cursors of a stack, read anew whenever one moves. */
export class Readings {
  private readonly first: CursorReader;
  private readonly second: CursorReader;
  private readonly hearers = new Set<() => void>();
  private readonly leave: () => void;
  private readonly shiftS: () => number;
  private atFirst = new Map<string, CursorValue>();
  private atSecond = new Map<string, CursorValue>();

  /** `shiftS` is added to the times of the capture to get those of the stage; 0 outside comparisons. */
  constructor(stage: Stage, source: TraceSource, channelIds: readonly string[], shiftS: () => number = () => 0) {
    this.shiftS = shiftS;
    this.first = new CursorReader(source, channelIds, (values) => {
      this.atFirst = byChannel(values, this.shiftS());
      this.tell();
    });
    this.second = new CursorReader(source, channelIds, (values) => {
      this.atSecond = byChannel(values, this.shiftS());
      this.tell();
    });
    const read = (): void => {
      this.first.want(this.ownTime(stage.cursorS));
      this.second.want(this.ownTime(stage.secondCursorS));
    };
    this.leave = stage.onCursors(read);
    read();
  }

  /**
   * The value of a channel under the first cursor, its sample's time as the stage counts it; null where there is no cursor
   * or no answer yet.
   */
  at(channelId: string): CursorValue | null {
    return this.atFirst.get(channelId) ?? null;
  }

  atSecondCursor(channelId: string): CursorValue | null {
    return this.atSecond.get(channelId) ?? null;
  }

  onChange(hear: () => void): () => void {
    this.hearers.add(hear);
    return () => this.hearers.delete(hear);
  }

  close(): void {
    this.leave();
    this.first.close();
    this.second.close();
  }

  private ownTime(timeS: number | null): number | null {
    return timeS === null ? null : timeS - this.shiftS();
  }

  private tell(): void {
    for (const hear of this.hearers) hear();
  }
}

function byChannel(values: readonly CursorValue[], shiftS: number): Map<string, CursorValue> {
  return new Map(
    values.map((value) => [
      value.channelId,
      { ...value, sampleS: value.sampleS === null ? null : value.sampleS + shiftS },
    ]),
  );
}
