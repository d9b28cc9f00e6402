// The cursor on foot: sample by sample, or to the next place worth a stop.

import type { ShownNote, ShownWindow, TraceSource } from './traceStackProps.ts';

/** Walks sample by sample; presses that come while a question is under way are added up. */
export class CursorWalk {
  private readonly source: TraceSource;
  private due = 0;
  private walking = false;

  constructor(source: TraceSource) {
    this.source = source;
  }

  /** `steps` samples of the channel from `fromS`, negative for earlier; `arrive` is told of every stop on the way. */
  async walk(channelId: string, fromS: number, steps: number, arrive: (timeS: number) => void): Promise<void> {
    this.due += steps;
    if (this.walking) return;
    this.walking = true;
    let atS = fromS;
    while (this.due !== 0) {
      const direction = this.due > 0 ? 1 : -1;
      const nextS = await this.source.nextStop(channelId, atS, direction, 'sample').catch(() => null);
      if (nextS === null) break;
      this.due -= direction;
      atS = nextS;
      arrive(atS);
    }
    this.due = 0;
    this.walking = false;
  }
}

/** The next switch of any of these channels, edge of a window or note from `fromS`, or null where there is none. */
export async function nextStopTime(
  source: TraceSource,
  switching: readonly string[],
  windows: readonly ShownWindow[],
  notes: readonly ShownNote[],
  fromS: number,
  direction: 1 | -1,
): Promise<number | null> {
  const switches = await Promise.all(
    switching.map((id) => source.nextStop(id, fromS, direction, 'switch').catch(() => null)),
  );
  const fixed = [
    ...windows.flatMap(({ startS, endS }) => [startS, endS]),
    ...notes.flatMap(({ startS, endS }) => (endS === null ? [startS] : [startS, endS])),
  ];
  const ahead = [...switches, ...fixed].filter(
    (timeS): timeS is number => timeS !== null && (direction === 1 ? timeS > fromS + 1e-9 : timeS < fromS - 1e-9),
  );
  if (ahead.length === 0) return null;
  return direction === 1 ? Math.min(...ahead) : Math.max(...ahead);
}
