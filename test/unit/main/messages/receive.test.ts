import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { channelOf } from '../../../../main/messages/preloadRequests.ts';
import {
  answerMessage,
  type Handlers,
  REQUESTS,
  type RequestName,
  receiveAll,
} from '../../../../main/messages/receive.ts';
import type { SenderEvent } from '../../../../main/messages/senderCheck.ts';

const OUR_PAGE = { id: 'the window' };
const NAMES = Object.keys(REQUESTS) as RequestName[];

/** Handlers that note what reached them and give back something of the right form where `null` is not. */
function notingHandlers() {
  const reached: string[] = [];
  const handlers = Object.fromEntries(
    NAMES.map((name) => [
      name,
      () => {
        reached.push(name);
        return null;
      },
    ]),
  ) as unknown as Handlers;
  return { reached, handlers };
}

function partsOf(handlers: Handlers, faults: unknown[] = []) {
  return {
    handlers,
    heard: () => {},
    isOurContents: (sender: unknown) => sender === OUR_PAGE,
    tellFault: (fault: unknown) => faults.push(fault),
  };
}

const event = (part: Partial<SenderEvent> = {}): SenderEvent => ({
  senderFrame: { url: 'tailtrace://app/index.html', parent: null },
  sender: OUR_PAGE,
  ...part,
});

describe('T-EL-17: who may ask', () => {
  const frame = (url: string, parent: unknown = null) => ({ senderFrame: { url, parent } });

  it.each([
    ['a frame that is gone', { senderFrame: null }],
    ['a frame inside the page', frame('tailtrace://app/index.html', { url: 'tailtrace://app/index.html' })],
    ['another scheme', frame('https://app/index.html')],
    ['a file', frame('file:///app/index.html')],
    ['a look-alike host', frame('tailtrace://app.example/index.html')],
    ['a host behind ours', frame('tailtrace://app@evil/index.html')],
    ['our host with a user', frame('tailtrace://someone@app/index.html')],
    ['our host with a port', frame('tailtrace://app:8080/index.html')],
    ['the host of printed sheets', frame('tailtrace://sheet/')],
    ['our scheme as a word', frame('data:text/html,tailtrace://app/')],
    ['no address', frame('')],
    ['about:blank', frame('about:blank')],
    ['another page of the program', { sender: { id: 'the window' } }],
    ['nobody', { sender: null }],
  ])('%s is refused on every channel, and no handler is reached', async (_words, part) => {
    const { reached, handlers } = notingHandlers();
    for (const name of NAMES) {
      const answered = await answerMessage(name, event(part), [null], partsOf(handlers));
      expect(answered).toMatchObject({ ok: false, refusal: { id: 'sender' } });
    }
    expect(reached).toEqual([]);
  });

  it('the main frame of our window is heard', async () => {
    const { reached, handlers } = notingHandlers();
    const answered = await answerMessage('settled', event(), [null], partsOf(handlers));
    expect(answered).toEqual({ ok: true, reply: null });
    expect(reached).toEqual(['settled']);
  });
});

describe('T-EL-17: what may be asked', () => {
  it.each(NAMES)('%s: 1 000 random argument tuples get a typed answer, and never a crash', async (name) => {
    const faults: unknown[] = [];
    const { reached, handlers } = notingHandlers();
    const tuples = fc.array(fc.anything({ withNullPrototype: true, withTypedArray: true }), { maxLength: 3 });
    let fitting = 0;
    await fc.assert(
      fc.asyncProperty(tuples, async (given) => {
        const fits = given.length === 1 && REQUESTS[name].ask.safeParse(given[0]).success;
        if (fits) fitting++;
        const answered = await answerMessage(name, event(), given, partsOf(handlers, faults));
        if (fits) return;
        expect(answered).toMatchObject({ ok: false, refusal: { id: 'question' } });
      }),
      { numRuns: 1000 },
    );
    expect(reached).toHaveLength(fitting);
  });

  it('a handler that throws is told to the shell alone', async () => {
    const faults: unknown[] = [];
    const { handlers } = notingHandlers();
    const broken: Handlers = {
      ...handlers,
      listVehicles: () => {
        throw new Error('ENOENT: /home/somebody/secret');
      },
    };
    const answered = await answerMessage('listVehicles', event(), [null], partsOf(broken, faults));
    expect(answered).toMatchObject({ ok: false, refusal: { id: 'fault' } });
    expect(JSON.stringify(answered)).not.toContain('somebody');
    expect(faults).toHaveLength(1);
  });

  it('a reply that is not what the list promises does not go out', async () => {
    const { handlers } = notingHandlers();
    const path = '/home/somebody/van.csv';
    const leaking = {
      ...handlers,
      pickCaptures: () => [{ token: 'x'.repeat(32), name: 'van.csv', bytes: 1, sample: false, path }],
    };
    const answered = await answerMessage('pickCaptures', event(), [null], partsOf(leaking));
    expect(answered).toMatchObject({ ok: false, refusal: { id: 'fault' } });
    expect(JSON.stringify(answered)).not.toContain('somebody');
  });

  it('there is one receiver for each message, and no other', () => {
    const channels: string[] = [];
    receiveAll({ handle: (channel) => void channels.push(channel) }, partsOf(notingHandlers().handlers));
    expect(channels.sort()).toEqual(NAMES.map(channelOf).sort());
  });
});
