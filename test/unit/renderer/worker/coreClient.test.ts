import { describe, expect, it } from 'vitest';
import type { FromCore, ToCore } from '../../../../core/bridge/coreMessages.ts';
import { type CorePort, createCoreClient } from '../../../../renderer/worker/coreClient.ts';

/** A port whose other side is the test. */
function openPort() {
  const sent: ToCore[] = [];
  let closed = false;
  const port: CorePort = {
    onmessage: null,
    postMessage: (message: ToCore) => void sent.push(message),
    close: () => {
      closed = true;
    },
  };
  const answer = (message: FromCore): void => {
    const listener: unknown = port.onmessage;
    if (typeof listener === 'function') listener({ data: message });
  };
  return { port, sent, answer, isClosed: () => closed };
}

const PROBLEM = { id: 'empty', what: 'The file is empty.', where: 'a.csv', doNext: 'Record again.' };

describe('a question', () => {
  it('gets the answer with its own id, whatever the order of the answers', async () => {
    const client = createCoreClient();
    const { port, sent, answer } = openPort();
    client.connect(port);
    const first = client.ask('close', { key: 'a' });
    const second = client.ask('suggest', { key: 'b' });
    const [one, two] = sent;
    answer({ type: 'reply', id: two?.id ?? 0, reply: ['second'] });
    answer({ type: 'reply', id: one?.id ?? 0, reply: null });
    expect(await second).toEqual({ ok: true, value: ['second'] });
    expect(await first).toEqual({ ok: true, value: null });
  });

  it('is refused as a value, never by throwing', async () => {
    const client = createCoreClient();
    const { port, sent, answer } = openPort();
    client.connect(port);
    const asked = client.ask('open', { token: 'token-1', choice: null });
    answer({ type: 'refused', id: sent[0]?.id ?? 0, problem: PROBLEM });
    expect(await asked).toEqual({ ok: false, problem: PROBLEM });
  });

  it('waits for a port when it is asked before there is one', async () => {
    const client = createCoreClient();
    const asked = client.ask('suggest', { key: 'a' });
    const { port, sent, answer } = openPort();
    client.connect(port);
    expect(sent).toHaveLength(1);
    answer({ type: 'reply', id: sent[0]?.id ?? 0, reply: [] });
    expect(await asked).toEqual({ ok: true, value: [] });
  });

  it('tells its progress to its own asker only', () => {
    const client = createCoreClient();
    const { port, sent, answer } = openPort();
    client.connect(port);
    const heard: number[] = [];
    void client.ask('open', { token: 't1', choice: null }, { onProgress: ({ rows }) => heard.push(rows) });
    void client.ask('open', { token: 't2', choice: null }, { onProgress: () => heard.push(-1) });
    answer({ type: 'progress', id: sent[0]?.id ?? 0, progress: { bytesRead: 1, bytesTotal: 2, rows: 7 } });
    expect(heard).toEqual([7]);
  });
});

describe('a cancelled question', () => {
  it('ends at once, tells the core, and passes over what comes late', async () => {
    const client = createCoreClient();
    const { port, sent, answer } = openPort();
    client.connect(port);
    const controller = new AbortController();
    const asked = client.ask('open', { token: 't', choice: null }, { signal: controller.signal });
    controller.abort();
    const outcome = await asked;
    expect(outcome.ok ? null : outcome.problem.id).toBe('cancelled');
    expect(sent.at(-1)).toEqual({ type: 'cancel', id: sent[0]?.id });
    expect(() => answer({ type: 'reply', id: sent[0]?.id ?? 0, reply: 'late' })).not.toThrow();
  });

  it('is never sent when it was cancelled before it was asked', async () => {
    const client = createCoreClient();
    const { port, sent } = openPort();
    client.connect(port);
    const outcome = await client.ask('close', { key: 'a' }, { signal: AbortSignal.abort() });
    expect(outcome.ok).toBe(false);
    expect(sent).toEqual([]);
  });
});

describe('when the core is lost', () => {
  it('refuses what was open and goes on with the next port', async () => {
    const client = createCoreClient();
    const first = openPort();
    client.connect(first.port);
    const lost = client.ask('suggest', { key: 'a' });
    client.lose();
    const outcome = await lost;
    expect(outcome.ok ? null : outcome.problem.id).toBe('coreLost');
    expect(first.isClosed()).toBe(true);

    const again = client.ask('suggest', { key: 'b' });
    const second = openPort();
    client.connect(second.port);
    second.answer({ type: 'reply', id: second.sent[0]?.id ?? 0, reply: [] });
    expect(await again).toEqual({ ok: true, value: [] });
  });
});
