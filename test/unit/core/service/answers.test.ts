import { describe, expect, it } from 'vitest';
import { captureOf, channelOf, startBench } from './serviceBench.ts';

describe('answers over a channel', () => {
  const volts = [0.1, 0.1, 0.8, 0.8, Number.NaN, 0.1, 0.8, 0.5, 0.4, 0.8];
  const lambda = channelOf('c1', [1.1, 0.9, 1.1], { role: 'upstreamLambda', unit: '1' });

  async function bench() {
    const made = startBench({
      readCapture: async (source) => ({
        ok: true,
        value: {
          capture: captureOf(source.name, [channelOf('c0', volts), lambda, channelOf('c2', [Number.NaN])]),
          question: null,
        },
      }),
    });
    made.host.files.set('t', { name: 'a.csv', chunks: 1 });
    made.ask(1, 'open', { token: 't', choice: null });
    await made.settle();
    return made;
  }

  it.each([
    [-1, null, null],
    [0, 0, 0.1],
    [2.99, 2, 0.8],
    [4, 3, 0.8],
    [4.5, 3, 0.8],
    [1000, 9, 0.8],
  ])('at %f s reads the sample at %s s: %s', async (timeS, sampleS, value) => {
    const made = await bench();
    made.ask(2, 'valuesAt', { key: 'capture-1', channelIds: ['c0', 'c2'], timeS });
    await made.settle();
    const [first, empty] = Object(made.answerTo(2)).reply;
    expect(first.sampleS).toBe(sampleS);
    if (value === null) expect(first.value).toBeNull();
    else expect(first.value).toBeCloseTo(value, 6);
    expect(empty).toEqual({ channelId: 'c2', sampleS: null, value: null });
  });

  it.each([
    ['c0', 3, 1, 'sample', 5],
    ['c0', 5, -1, 'sample', 3],
    ['c0', 9, 1, 'sample', null],
    ['c0', 0, -1, 'sample', null],
    ['c0', 3, 1, 'switch', 4],
    ['c0', 6, 1, 'switch', null],
    ['c1', 0, 1, 'switch', 0.5],
    ['c2', 0, 1, 'switch', null],
  ] as const)('%s from %f s, direction %i: the next %s is at %s s', async (channelId, fromS, direction, stop, at) => {
    const made = await bench();
    made.ask(2, 'nextStop', { key: 'capture-1', channelId, fromS, direction, stop });
    await made.settle();
    const found = Object(made.answerTo(2)).reply;
    if (at === null) expect(found).toBeNull();
    else expect(found).toBeCloseTo(at, 3);
  });

  it('describes a stretch in words with units, and says where nothing was recorded', async () => {
    const made = await bench();
    made.ask(2, 'describe', { key: 'capture-1', channelIds: ['c0', 'c2'], startS: 0, endS: 9 });
    await made.settle();
    expect(Object(made.answerTo(2)).reply).toEqual([
      'Upstream oxygen sensor, bank 1, from 0.0 to 9.0 s: nine values, lowest 0.100 V, highest 0.800 V, mean 0.489 V. It crosses its switch point three times.',
      'Upstream oxygen sensor, bank 1, from 0.0 to 9.0 s: no values were recorded.',
    ]);
  });
});
