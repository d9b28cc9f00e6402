import { describe, expect, it } from 'vitest';
import type { TraceView } from '../../../../core/capture/traceView.ts';
import type { Stretch } from '../../../../core/windows/window.ts';
import type { TraceSource } from '../../../../renderer/plot/traceStackProps.ts';
import { ViewLoader } from '../../../../renderer/plot/viewLoader.ts';

interface Question {
  readonly stretch: Stretch;
  readonly buckets: number;
  answer(kind?: TraceView['kind']): Promise<void>;
  refuse(): Promise<void>;
}

/** A core whose answers are given by hand. */
function core(intervalS = 0) {
  const questions: Question[] = [];
  const source: TraceSource = {
    views: (_ids, stretch, buckets) =>
      new Promise((resolve, reject) => {
        questions.push({
          stretch,
          buckets,
          answer: async (kind = 'envelope') => {
            resolve([viewOver(stretch, kind)]);
            await turns();
          },
          refuse: async () => {
            reject(new Error('The core has gone.'));
            await turns();
          },
        });
      }),
    valuesAt: async () => [],
    nextStop: async () => null,
    describe: async () => [],
  };
  let loads = 0;
  const loader = new ViewLoader(
    { source, channelIds: ['c0'], whole: { startS: 0, endS: 1000 }, intervalS },
    () => loads++,
  );
  return { loader, questions, loads: () => loads };
}

function viewOver(stretch: Stretch, kind: TraceView['kind']): TraceView {
  const none = new Float32Array();
  return {
    channelId: 'c0',
    kind,
    ...stretch,
    timesS: new Float64Array(),
    low: none,
    high: none,
    steps: false,
    gapS: 1,
  };
}

/** Lets everything that was promised happen. */
async function turns(): Promise<void> {
  for (let turn = 0; turn < 8; turn++) await Promise.resolve();
}

const view = { startS: 400, endS: 500 };

describe('a loader of views', () => {
  it('asks for some more on both sides, one bucket a pixel', () => {
    const { loader, questions } = core();
    loader.want(view, 1000);
    const asked = questions[0];
    expect(asked?.stretch.startS).toBeLessThan(400);
    expect(asked?.stretch.endS).toBeGreaterThan(500);
    const spanS = (asked?.stretch.endS ?? 0) - (asked?.stretch.startS ?? 0);
    expect((asked?.buckets ?? 0) / spanS).toBeCloseTo(10, 1);
  });

  it('asks for nothing outside the capture', () => {
    const { loader, questions } = core();
    loader.want({ startS: 0, endS: 1000 }, 1000);
    expect(questions[0]?.stretch).toEqual({ startS: 0, endS: 1000 });
  });

  it('asks for a few samples beyond both edges of a slow channel, so that its line runs in', () => {
    const { loader, questions } = core(20);
    loader.want({ startS: 400, endS: 401 }, 1000);
    expect(questions[0]?.stretch).toEqual({ startS: 350, endS: 451 });
  });

  it('never has two questions under way, and of the wishes that came meanwhile asks only the last', async () => {
    const { loader, questions } = core();
    loader.want({ startS: 100, endS: 110 }, 1000);
    loader.want({ startS: 200, endS: 210 }, 1000);
    loader.want({ startS: 300, endS: 310 }, 1000);
    expect(questions).toHaveLength(1);
    await questions[0]?.answer();
    expect(questions).toHaveLength(2);
    expect(questions[1]?.stretch.startS).toBeGreaterThan(290);
    await questions[1]?.answer();
    expect(questions).toHaveLength(2);
    expect(loader.upToDate).toBe(true);
  });

  it('keeps what it had until the answer is there', async () => {
    const { loader, questions, loads } = core();
    loader.want(view, 1000);
    await questions[0]?.answer();
    const before = loader.views;
    loader.want({ startS: 800, endS: 900 }, 1000);
    expect(loader.views).toBe(before);
    await questions[1]?.answer();
    expect(loader.views).not.toBe(before);
    expect(loads()).toBe(2);
  });

  it('does not ask while a pan stays inside what is loaded, and asks when it leaves it', async () => {
    const { loader, questions } = core();
    loader.want(view, 1000);
    await questions[0]?.answer();
    loader.want({ startS: 420, endS: 520 }, 1000);
    expect(questions).toHaveLength(1);
    loader.want({ startS: 460, endS: 560 }, 1000);
    expect(questions).toHaveLength(2);
  });

  it('asks for finer buckets after zooming in, unless every sample is there already', async () => {
    const envelope = core();
    envelope.loader.want(view, 1000);
    await envelope.questions[0]?.answer('envelope');
    envelope.loader.want({ startS: 440, endS: 450 }, 1000);
    expect(envelope.questions).toHaveLength(2);
    const samples = core();
    samples.loader.want(view, 1000);
    await samples.questions[0]?.answer('samples');
    samples.loader.want({ startS: 440, endS: 450 }, 1000);
    expect(samples.questions).toHaveLength(1);
  });

  it('asks in the time of the capture when its axis is shifted', () => {
    const { loader, questions } = core();
    loader.shiftS = -400;
    loader.want({ startS: 0, endS: 100 }, 1000);
    const { startS, endS } = questions[0]?.stretch ?? { startS: 0, endS: 0 };
    expect((startS + endS) / 2).toBeCloseTo(450, 6);
  });

  it('says when an answer did not come, keeps what it had, and asks again at the next wish', async () => {
    const { loader, questions } = core();
    loader.want(view, 1000);
    await questions[0]?.answer();
    loader.want({ startS: 800, endS: 900 }, 1000);
    await questions[1]?.refuse();
    expect(loader.failed).toBe(true);
    expect(loader.views).toHaveLength(1);
    loader.want({ startS: 800, endS: 900 }, 1000);
    await questions[2]?.answer();
    expect(loader.failed).toBe(false);
  });

  it('tells nobody after it was closed', async () => {
    const { loader, questions, loads } = core();
    loader.want(view, 1000);
    loader.want({ startS: 800, endS: 900 }, 1000);
    loader.close();
    await questions[0]?.answer();
    expect(loads()).toBe(0);
    expect(questions).toHaveLength(1);
  });
});
