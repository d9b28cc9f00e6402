import { describe, expect, it } from 'vitest';
import { type FrameClient, FrameScheduler } from '../../../../renderer/plot/frame.ts';

/** A screen whose frames are made by hand. */
function screen() {
  const asked: ((nowMs: number) => void)[] = [];
  return {
    request: (run: (nowMs: number) => void) => {
      asked.push(run);
    },
    asked,
    show: (nowMs: number) => runAll(asked, nowMs),
  };
}

function client(name: string, log: string[], movesFor = 0): FrameClient {
  let left = movesFor;
  return {
    changeView: (nowMs) => {
      log.push(`${name} moves at ${nowMs}`);
      return left-- > 0;
    },
    draw: () => {
      log.push(`${name} draws`);
    },
  };
}

describe('the owner of the frame', () => {
  it('asks for one frame, however often and by however many it is told', () => {
    const { request, asked } = screen();
    const frame = new FrameScheduler(request);
    const [a, b] = [client('a', []), client('b', [])];
    frame.markStale(a);
    frame.markStale(b);
    frame.markStale(a);
    expect(asked).toHaveLength(1);
  });

  it('moves all views first and draws after that, each once', () => {
    const { request, show } = screen();
    const frame = new FrameScheduler(request);
    const log: string[] = [];
    frame.markStale(client('a', log));
    frame.markStale(client('b', log));
    show(10);
    expect(log).toEqual(['a moves at 10', 'b moves at 10', 'a draws', 'b draws']);
    expect(frame.idle).toBe(true);
  });

  it('goes on while a movement is under way and then asks for nothing more', () => {
    const { request, asked, show } = screen();
    const frame = new FrameScheduler(request);
    const log: string[] = [];
    frame.markStale(client('a', log, 2));
    for (let frames = 0; asked.length > 0; frames++) show(frames);
    expect(log.filter((line) => line === 'a draws')).toHaveLength(3);
  });

  it('does not draw what has been forgotten', () => {
    const { request, show } = screen();
    const frame = new FrameScheduler(request);
    const log: string[] = [];
    const gone = client('gone', log);
    frame.markStale(gone);
    frame.forget(gone);
    show(1);
    expect(log).toEqual([]);
  });
});

function runAll(asked: ((nowMs: number) => void)[], nowMs: number): void {
  for (const run of asked.splice(0)) run(nowMs);
}
