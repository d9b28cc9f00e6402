import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toCoreSchema } from '../../../../core/bridge/askSchemas.ts';
import type { FromCore } from '../../../../core/bridge/coreMessages.ts';
import { GONE, startBench } from './serviceBench.ts';

const reply = (id: number) => expect.objectContaining({ type: 'reply', id });

/** A bench with one capture of 20 samples open. */
async function withOpenCapture() {
  const bench = startBench();
  bench.host.files.set('token-a', { name: 'a.csv', chunks: 20 });
  bench.ask(1, 'open', { token: 'token-a', choice: null });
  await bench.settle();
  return bench;
}

function keyOf(answer: FromCore | undefined): string {
  const summary = answer?.type === 'reply' ? Object(answer.reply).summary : undefined;
  return String(Object(summary).key);
}

describe('opening', () => {
  it('gives a summary with the hash and without a single sample', async () => {
    const { answerTo, host } = await withOpenCapture();
    const answer = answerTo(1);
    expect(answer).toMatchObject({
      reply: { summary: { name: 'a.csv', sha256: 'ab'.repeat(32), channels: [{ id: 'c0', samples: 20 }] } },
    });
    expect(JSON.stringify(answer)).not.toMatch(/"values"|"time"/);
    expect(host.closed).toEqual(['a.csv']);
  });

  it('the reader is told how much memory the host leaves for it', async () => {
    const given: unknown[] = [];
    const bench = startBench({
      async readCapture(_source, { memoryBytes }) {
        given.push(memoryBytes);
        return { ok: false, problem: GONE };
      },
    });
    bench.host.files.set('token-a', { name: 'a.csv', chunks: 1 });
    bench.host.leave(123);
    bench.ask(1, 'open', { token: 'token-a', choice: null });
    await bench.settle();
    expect(given).toEqual([123]);
  });

  it('a token of nobody is refused with the shell’s words', async () => {
    const bench = startBench();
    bench.ask(1, 'open', { token: 'made up', choice: null });
    await bench.settle();
    expect(bench.answerTo(1)).toMatchObject({ type: 'refused', problem: { id: 'vanished' } });
  });

  it('tells of progress at most ten times a second, however often the reader reports', async () => {
    const bench = startBench();
    const file = { name: 'a.csv', chunks: 100, afterChunk: () => bench.host.pass(10) };
    bench.host.files.set('token-a', file);
    bench.ask(1, 'open', { token: 'token-a', choice: null });
    for (let i = 0; i < 20; i++) await bench.settle();
    const told = bench.said.filter((message) => message.type === 'progress');
    expect(told).toHaveLength(10);
    expect(bench.answerTo(1)).toEqual(reply(1));
  });

  it('gives way between chunks: another capture is opened and drawn while a long one is read', async () => {
    const bench = startBench();
    const answeredAt: number[] = [];
    bench.host.files.set('short', { name: 'short.csv', chunks: 3 });
    bench.host.files.set('long', {
      name: 'long.csv',
      chunks: 200,
      afterChunk: (chunk) => {
        bench.host.pass(25);
        if (chunk === 10) bench.ask(2, 'open', { token: 'short', choice: null });
        if (bench.answerTo(2) !== undefined && answeredAt.length === 0) answeredAt.push(chunk);
      },
    });
    bench.ask(1, 'open', { token: 'long', choice: null });
    for (let i = 0; i < 40; i++) await bench.settle();
    expect(bench.answerTo(1)).toMatchObject({ reply: { summary: { name: 'long.csv', rows: 100 } } });
    expect(answeredAt[0]).toBeLessThan(30);
  });

  it.each([
    [{ vanishesAt: 5 }, 'vanished'],
    [{ changes: true }, 'changed'],
  ])('a file that goes wrong on the way (%o) is refused, closed, and not held', async (wrong, id) => {
    const bench = startBench();
    bench.host.files.set('t', { name: 'a.csv', chunks: 9, ...wrong });
    bench.ask(1, 'open', { token: 't', choice: null });
    await bench.settle();
    expect(bench.answerTo(1)).toMatchObject({ type: 'refused', problem: { id } });
    expect(bench.host.closed).toEqual(['a.csv']);
    bench.ask(2, 'suggest', { key: 'capture-1' });
    await bench.settle();
    expect(bench.answerTo(2)).toMatchObject({ type: 'refused', problem: { id: 'notOpen' } });
  });
});

describe('cancelling', () => {
  it('is answered at once, stops after the chunk in hand, and leaves nothing held', async () => {
    const bench = startBench();
    let taken = 0;
    bench.host.files.set('t', {
      name: 'a.csv',
      chunks: 1000,
      afterChunk: (chunk) => {
        taken = chunk;
        if (chunk === 7) bench.service.hear({ type: 'cancel', id: 1 });
      },
    });
    bench.ask(1, 'open', { token: 't', choice: null });
    await bench.settle();
    expect(bench.answerTo(1)).toMatchObject({ type: 'refused', problem: { id: 'cancelled' } });
    expect(bench.said.filter((message) => message.type !== 'progress')).toHaveLength(1);
    expect(taken).toBeLessThanOrEqual(8);
    expect(bench.host.closed).toEqual(['a.csv']);
  });

  it('that meets the answer on its way lets the capture go', async () => {
    const bench = await withOpenCapture();
    bench.service.hear({ type: 'cancel', id: 1 });
    bench.ask(2, 'valuesAt', { key: keyOf(bench.answerTo(1)), channelIds: [], timeS: 0 });
    await bench.settle();
    expect(bench.answerTo(2)).toMatchObject({ type: 'refused', problem: { id: 'notOpen' } });
  });

  it('of nothing is no fault', () => {
    const bench = startBench();
    bench.service.hear({ type: 'cancel', id: 99 });
    expect(bench.said).toEqual([]);
  });
});

describe('slow questions', () => {
  /** A bench whose scoring notes its order, with a capture open. */
  async function scoring() {
    const scored: number[] = [];
    const bench = startBench({
      suggestWindows: () => {
        scored.push(scored.length);
        return [];
      },
    });
    bench.host.files.set('t', { name: 'a.csv', chunks: 9 });
    bench.ask(1, 'open', { token: 't', choice: null });
    await bench.settle();
    return { bench, scored, key: keyOf(bench.answerTo(1)) };
  }

  it('let the cursor by: what is quick is answered before all that is slow', async () => {
    const { bench, key } = await scoring();
    for (let id = 2; id < 12; id++) bench.ask(id, 'suggest', { key });
    bench.ask(20, 'valuesAt', { key, channelIds: ['c0'], timeS: 3 });
    await bench.settle();
    const order = bench.said.filter(({ id }) => id > 1).map(({ id }) => id);
    expect(order).toEqual([20, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]);
  });

  it('that were cancelled before their turn are not worked out', async () => {
    const { bench, scored, key } = await scoring();
    for (let id = 2; id < 12; id++) bench.ask(id, 'suggest', { key });
    for (let id = 3; id < 12; id++) bench.service.hear({ type: 'cancel', id });
    await bench.settle();
    expect(scored).toHaveLength(1);
    expect(bench.answerTo(2)).toEqual(reply(2));
    expect(bench.answerTo(11)).toMatchObject({ type: 'refused', problem: { id: 'cancelled' } });
  });
});

describe('holding', () => {
  it('two captures never mix, not even two of the same file', async () => {
    const bench = await withOpenCapture();
    bench.host.files.set('token-b', { name: 'b.csv', chunks: 5 });
    bench.ask(2, 'open', { token: 'token-b', choice: null });
    bench.ask(3, 'open', { token: 'token-a', choice: null });
    await bench.settle();
    const keys = [1, 2, 3].map((id) => keyOf(bench.answerTo(id)));
    expect(new Set(keys).size).toBe(3);
    keys.forEach((key, i) => {
      bench.ask(10 + i, 'valuesAt', { key, channelIds: ['c0'], timeS: 1000 });
    });
    bench.ask(20, 'close', { key: keys[0] ?? '' });
    bench.ask(21, 'valuesAt', { key: keys[0] ?? '', channelIds: ['c0'], timeS: 3 });
    bench.ask(22, 'valuesAt', { key: keys[2] ?? '', channelIds: ['c0'], timeS: 3 });
    await bench.settle();
    const last = (id: number) => Object(bench.answerTo(id)).reply?.[0]?.value;
    expect([last(10), last(11), last(12)]).toEqual([19, 4, 19]);
    expect(bench.answerTo(21)).toMatchObject({ type: 'refused', problem: { id: 'notOpen' } });
    expect(last(22)).toBe(3);
  });

  it('a view carries its own few numbers and not the buffer they were taken from', async () => {
    const bench = await withOpenCapture();
    const ask = { key: keyOf(bench.answerTo(1)), channelIds: ['c0'], startS: 0, endS: 9, buckets: 100 };
    bench.ask(2, 'views', ask);
    await bench.settle();
    const view = Object(bench.answerTo(2)).reply[0];
    expect(view.timesS.buffer.byteLength).toBe(16);
  });

  it('prepares the drawing of a channel once', async () => {
    let prepared = 0;
    const bench = startBench({
      drawerOf: (channel) => {
        prepared++;
        const none = new Float32Array(0);
        const times = new Float64Array(0);
        return (startS, endS) => ({
          channelId: channel.id,
          kind: 'samples',
          startS,
          endS,
          timesS: times,
          low: none,
          high: none,
          steps: false,
          gapS: 1,
        });
      },
    });
    bench.host.files.set('t', { name: 'a.csv', chunks: 2 });
    bench.ask(1, 'open', { token: 't', choice: null });
    await bench.settle();
    const key = keyOf(bench.answerTo(1));
    for (let id = 2; id < 12; id++)
      bench.ask(id, 'views', { key, channelIds: ['c0'], startS: 0, endS: id, buckets: 9 });
    await bench.settle();
    expect(bench.answerTo(11)).toEqual(reply(11));
    expect(prepared).toBe(1);
  });

  it('when the window is gone, what was being read stops and nothing is held', async () => {
    const bench = await withOpenCapture();
    const key = keyOf(bench.answerTo(1));
    bench.host.files.set('long', {
      name: 'long.csv',
      chunks: 500,
      afterChunk: (chunk) => chunk === 3 && bench.service.end(),
    });
    bench.ask(2, 'open', { token: 'long', choice: null });
    await bench.settle();
    expect(bench.answerTo(2)).toBeUndefined();
    expect(bench.host.closed).toEqual(['a.csv', 'long.csv']);
    bench.ask(3, 'suggest', { key });
    await bench.settle();
    expect(bench.answerTo(3)).toMatchObject({ problem: { id: 'notOpen' } });
  });
});

describe('faults', () => {
  it('a fault in a function of core is told to the host, refused in words, and the service lives on', async () => {
    const bench = startBench({
      suggestWindows: () => {
        throw new TypeError('a bug');
      },
    });
    bench.host.files.set('t', { name: 'a.csv', chunks: 2 });
    bench.ask(1, 'open', { token: 't', choice: null });
    await bench.settle();
    bench.ask(2, 'suggest', { key: keyOf(bench.answerTo(1)) });
    await bench.settle();
    bench.ask(3, 'close', { key: 'capture-1' });
    await bench.settle();
    expect(bench.answerTo(2)).toMatchObject({ type: 'refused', problem: { id: 'failed' } });
    expect(JSON.stringify(bench.answerTo(2))).not.toContain('a bug');
    expect(bench.faults).toEqual([expect.any(TypeError)]);
    expect(bench.answerTo(3)).toEqual(reply(3));
  });

  it('whatever arrives, nothing is thrown, and every question gets exactly one answer', async () => {
    const names = fc.constantFrom(
      'open',
      'close',
      'views',
      'valuesAt',
      'nextStop',
      'describe',
      'compare',
      'toString',
      '__proto__',
    );
    const question = fc.record({
      type: fc.constant('ask'),
      id: fc.integer(),
      name: fc.oneof(names, fc.string()),
      ask: fc.anything(),
    });
    await fc.assert(
      fc.asyncProperty(fc.oneof(question, fc.anything()), async (message) => {
        const bench = startBench();
        bench.service.hear(message);
        await bench.settle();
        const question = toCoreSchema.safeParse(message);
        const answers = question.success && question.data.type === 'ask' ? 1 : 0;
        expect(bench.said).toHaveLength(answers);
        // Nothing is open here, so the only thing that can be done is to close what is not open.
        if (bench.said[0]?.type === 'reply') expect(Object(message).name).toBe('close');
      }),
      { numRuns: 1000 },
    );
  });
});
