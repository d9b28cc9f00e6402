import { describe, expect, it } from 'vitest';
import type { Stretch } from '../../../../core/windows/window.ts';
import { FrameScheduler } from '../../../../renderer/plot/frame.ts';
import { LEFT_GUTTER, RIGHT_GUTTER, Stage, type StageTicks } from '../../../../renderer/plot/stage.ts';
import type { TimeScale } from '../../../../renderer/plot/timeScale.ts';

const PAPER = 1000;

function staged(visible: Stretch, form: 's' | 'min:s' = 's') {
  const asked: ((nowMs: number) => void)[] = [];
  const stage = new Stage(visible, form, new FrameScheduler((run) => asked.push(run)));
  const drawn: { scale: TimeScale; ticks: StageTicks }[] = [];
  const looked: Stretch[] = [];
  const drawing = {
    lookAt: (stretch: Stretch) => {
      looked.push(stretch);
    },
    draw: (scale: TimeScale, ticks: StageTicks) => {
      drawn.push({ scale, ticks });
    },
  };
  stage.addDrawing(drawing);
  stage.resize(PAPER + LEFT_GUTTER + RIGHT_GUTTER);
  return { stage, drawing, drawn, looked, show: (nowMs: number) => runAll(asked, nowMs) };
}

describe('a stage', () => {
  it('draws nothing before it has a size', () => {
    const asked: (() => void)[] = [];
    const stage = new Stage({ startS: 0, endS: 1 }, 's', new FrameScheduler((run) => asked.push(() => run(0))));
    const drawn: unknown[] = [];
    stage.addDrawing({ lookAt: () => drawn.push('look'), draw: () => drawn.push('draw') });
    for (const run of asked) run();
    expect(drawn).toEqual([]);
    expect(stage.scale).toBeNull();
  });

  it('gives every drawing the one scale, with room for the labels left and right', () => {
    const { drawn, show } = staged({ startS: 100, endS: 110 });
    show(0);
    const scale = drawn[0]?.scale;
    expect([scale?.xOf(100), scale?.xOf(110)]).toEqual([LEFT_GUTTER, LEFT_GUTTER + PAPER]);
  });

  it('asks for the view at once when it changes, and draws it in the next frame', () => {
    const { stage, drawn, looked, show } = staged({ startS: 0, endS: 100 });
    show(0);
    stage.look({ startS: 40, endS: 60 }, false);
    expect(looked.at(-1)).toEqual({ startS: 40, endS: 60 });
    show(16);
    expect(drawn.at(-1)?.scale.startS).toBe(40);
  });

  it('shows on the way where a zoom goes, and arrives within 150 ms', () => {
    const { stage, drawn, show } = staged({ startS: 0, endS: 100 });
    show(0);
    stage.look({ startS: 40, endS: 50 }, true);
    for (const nowMs of [1000, 1016, 1060, 1150, 1166]) show(nowMs);
    const spans = drawn.map(({ scale }) => scale.endS - scale.startS);
    expect(spans[0]).toBe(100);
    for (const [before, after] of spans.slice(1).map((span, i) => [spans[i] ?? 0, span] as const)) {
      expect(after).toBeLessThanOrEqual(before);
    }
    const last = drawn.at(-1)?.scale;
    expect([last?.startS, last?.endS]).toEqual([40, 50]);
  });

  it('does not jump to where a newer wish overtakes a movement', () => {
    const { stage, drawn, show } = staged({ startS: 0, endS: 100 });
    show(0);
    stage.look({ startS: 40, endS: 50 }, true);
    show(1000);
    stage.look({ startS: 10, endS: 20 }, false);
    show(1016);
    expect(drawn.at(-1)?.scale.startS).toBe(10);
  });

  it('draws only the drawing that says it is stale', () => {
    const { stage, drawing, drawn, show } = staged({ startS: 0, endS: 100 });
    const others: unknown[] = [];
    stage.addDrawing({ lookAt: () => undefined, draw: () => others.push('draw') });
    show(0);
    const [mine, theirs] = [drawn.length, others.length];
    stage.markStale(drawing);
    show(16);
    expect(drawn.length).toBe(mine + 1);
    expect(others.length).toBe(theirs);
  });

  it('places what lies in time after every change of the scale, and no more often', () => {
    const { stage, drawing, show } = staged({ startS: 0, endS: 100 });
    show(0);
    const places: number[] = [];
    stage.addPlacer((scale) => places.push(scale.startS));
    stage.markStale(drawing);
    show(16);
    stage.look({ startS: 40, endS: 60 }, false);
    show(32);
    expect(places).toEqual([0, 40]);
  });

  it('labels its ticks in the form of the capture and leaves out a label that would run into the name of the axis', () => {
    const { drawn, show } = staged({ startS: 600, endS: 1200 }, 'min:s');
    show(0);
    const ticks = drawn[0]?.ticks;
    expect(ticks?.ticks.slice(0, 3)).toEqual([600, 660, 720]);
    expect(ticks?.labels.slice(0, 3)).toEqual(['', '11:00', '12:00']);
    expect(ticks?.fine.length).toBeGreaterThan(ticks?.ticks.length ?? 0);
  });

  it('tells of a cursor at once, not in the next frame', () => {
    const { stage } = staged({ startS: 0, endS: 100 });
    const heard: (number | null)[] = [];
    stage.onCursors(() => heard.push(stage.cursorS));
    stage.setCursor(12);
    stage.setCursor(12);
    stage.setCursor(null);
    expect(heard).toEqual([12, null]);
  });
});

function runAll(asked: ((nowMs: number) => void)[], nowMs: number): void {
  for (const run of asked.splice(0)) run(nowMs);
}
