import type { Capture } from '../capture/capture.ts';
import type { Channel } from '../capture/channel.ts';
import type { CoreFunctions, Drawer } from './coreFunctions.ts';

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
  readonly #core: Pick<CoreFunctions, 'drawerOf'>;
  readonly #held = new Map<string, HeldCapture>();
  readonly #openedBy = new Map<number, string>();
  #opened = 0;

  constructor(core: Pick<CoreFunctions, 'drawerOf'>) {
    this.#core = core;
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
    this.#openedBy.set(askId, held.key);
    return held;
  }

  find(key: string): HeldCapture | null {
    return this.#held.get(key) ?? null;
  }

  /** After this nothing of the capture is reachable from here. */
  release(key: string): void {
    this.#held.delete(key);
    for (const [askId, opened] of this.#openedBy) if (opened === key) this.#openedBy.delete(askId);
  }

  /** Releases what a question opened, if it did: its asker gave up before the answer arrived. */
  releaseOpenedBy(askId: number): void {
    const key = this.#openedBy.get(askId);
    if (key !== undefined) this.release(key);
  }

  releaseAll(): void {
    this.#held.clear();
    this.#openedBy.clear();
  }
}
