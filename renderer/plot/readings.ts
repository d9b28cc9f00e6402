import type { CursorValue } from '../../core/capture/traceView.ts';
import type { Stretch } from '../../core/windows/window.ts';
import { CursorReader } from './cursorReader.ts';
import type { Stage } from './stage.ts';
import type { TraceSource } from './traceStackProps.ts';

/** The values under the cursors of a stack, by the key of a legend's entry. */
export interface Readings {
  /** The value under the first cursor, its sample's time as the stage counts it; null where there is none, or none yet. */
  at(key: string): CursorValue | null;
  atSecondCursor(key: string): CursorValue | null;
  onChange(hear: () => void): () => void;
}

export interface ReadingsFeed {
  readonly source: TraceSource;
  readonly channelIds: readonly string[];
  /** Nothing is read outside this stretch of the capture; null reads everywhere. */
  readonly within: Stretch | null;
}

/** Reads one capture anew whenever a cursor moves. Keys are ids of its channels. */
export class CaptureReadings implements Readings {
  private readonly feed: ReadingsFeed;
  private readonly stage: Stage;
  private readonly first: CursorReader;
  private readonly second: CursorReader;
  private readonly hearers = new Set<() => void>();
  private readonly leave: () => void;
  private shiftS = 0;
  private atFirst = new Map<string, CursorValue>();
  private atSecond = new Map<string, CursorValue>();

  constructor(stage: Stage, feed: ReadingsFeed) {
    this.stage = stage;
    this.feed = feed;
    const { source, channelIds } = feed;
    this.first = new CursorReader(source, channelIds, (values) => {
      this.atFirst = this.byChannel(values);
      this.tell();
    });
    this.second = new CursorReader(source, channelIds, (values) => {
      this.atSecond = this.byChannel(values);
      this.tell();
    });
    this.leave = stage.onCursors(() => this.read());
    this.read();
  }

  /** What is added to the times of the capture to get those of the stage; 0 outside comparisons. */
  setShift(shiftS: number): void {
    if (shiftS === this.shiftS) return;
    this.shiftS = shiftS;
    this.read();
  }

  at(key: string): CursorValue | null {
    return this.atFirst.get(key) ?? null;
  }

  atSecondCursor(key: string): CursorValue | null {
    return this.atSecond.get(key) ?? null;
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

  private read(): void {
    this.first.want(this.ownTime(this.stage.cursorS));
    this.second.want(this.ownTime(this.stage.secondCursorS));
  }

  private ownTime(timeS: number | null): number | null {
    if (timeS === null) return null;
    const ownS = timeS - this.shiftS;
    const { within } = this.feed;
    return within !== null && (ownS < within.startS || ownS > within.endS) ? null : ownS;
  }

  private byChannel(values: readonly CursorValue[]): Map<string, CursorValue> {
    const { shiftS } = this;
    const moved = (sampleS: number | null): number | null => (sampleS === null ? null : sampleS + shiftS);
    return new Map(values.map((value) => [value.channelId, { ...value, sampleS: moved(value.sampleS) }]));
  }

  private tell(): void {
    for (const hear of this.hearers) hear();
  }
}

/** The readings of both sides of a comparison; keys are "first c3" and "second c3". */
export class PairedReadings implements Readings {
  private readonly sides: Readonly<Record<'first' | 'second', Readings>>;

  constructor(first: Readings, second: Readings) {
    this.sides = { first, second };
  }

  at(key: string): CursorValue | null {
    const { side, id } = sideOf(key);
    return this.sides[side].at(id);
  }

  atSecondCursor(key: string): CursorValue | null {
    const { side, id } = sideOf(key);
    return this.sides[side].atSecondCursor(id);
  }

  onChange(hear: () => void): () => void {
    const leaves = [this.sides.first.onChange(hear), this.sides.second.onChange(hear)];
    return () => {
      for (const leave of leaves) leave();
    };
  }
}

function sideOf(key: string): { side: 'first' | 'second'; id: string } {
  const at = key.indexOf(' ');
  return { side: key.slice(0, at) === 'second' ? 'second' : 'first', id: key.slice(at + 1) };
}
