import type { Capture } from '../capture/capture.ts';
import type { Channel } from '../capture/channel.ts';
import type { Drawer, QuickCore } from './coreFunctions.ts';
import type { SlowAnswers } from './slowAnswers.ts';

/** An open capture with what has been prepared for drawing it. */
export interface HeldCapture {
  readonly key: string;
  readonly capture: Capture;
  channel(id: string): Channel | null;
  /** Made when the channel is first drawn, kept until the capture is closed. */
  drawer(channel: Channel): Drawer;
}

/** The captures that one window has open. Each has a key of its own, so that two of one file never mix. */
export class HeldCaptures {
  readonly #core: Pick<QuickCore, 'drawerOf'>;
  readonly #slow: Pick<SlowAnswers, 'hold' | 'release'>;
  readonly #held = new Map<string, HeldCapture>();
  readonly #openedBy = new Map<number, string>();
  #opened = 0;

  /** `slow` is told of every capture that is held or let go. */
  constructor(core: Pick<QuickCore, 'drawerOf'>, slow: Pick<SlowAnswers, 'hold' | 'release'>) {
    this.#core = core;
    this.#slow = slow;
  }

  /** `askId` is the question that opened it. */
  hold(capture: Capture, askId: number): HeldCapture {
    this.#opened++;
    const drawers = new Map<string, Drawer>();
    const channels = new Map(capture.channels.map((channel) => [channel.id, channel]));
    const held: HeldCapture = {
      key: `capture-${this.#opened}`,
      capture,
      channel: (id) => channels.get(id) ?? null,
      drawer: (channel) => {
        const drawer = drawers.get(channel.id) ?? this.#core.drawerOf(channel);
        drawers.set(channel.id, drawer);
        return drawer;
      },
    };
    this.#held.set(held.key, held);
    this.#slow.hold(held.key, capture);
    this.#openedBy.set(askId, held.key);
    return held;
  }

  find(key: string): HeldCapture | null {
    return this.#held.get(key) ?? null;
  }

  /** After this nothing of the capture is reachable from here. */
  release(key: string): void {
    if (this.#held.delete(key)) this.#slow.release(key);
    for (const [askId, opened] of this.#openedBy) if (opened === key) this.#openedBy.delete(askId);
  }

  /** Releases what a question opened, if it did: its asker gave up before the answer arrived. */
  releaseOpenedBy(askId: number): void {
    const key = this.#openedBy.get(askId);
    if (key !== undefined) this.release(key);
  }

  releaseAll(): void {
    for (const key of [...this.#held.keys()]) this.release(key);
  }
}
