// What the preload itself asks the shell, beside what it passes on for the window. The page cannot reach these.

import { z } from 'zod';
import { takenSchema } from '../../core/bridge/shellMessages.ts';

export const PRELOAD_REQUESTS = {
  /** Tokens for files that a person dropped; the preload alone sees where they lie. '' where a file lies nowhere. */
  takePaths: { ask: z.array(z.string().max(40_000)).max(1000), reply: takenSchema },
  /** The page has loaded: send it a port to the core's process. Told with what the preload sees of its own walls. */
  wantCore: {
    ask: z.strictObject({ contextIsolated: z.boolean(), sandboxed: z.boolean() }),
    reply: z.null(),
  },
} as const;

/** Channel of a request or an event. */
export const channelOf = (name: string): string => `tailtrace:${name}`;

/** Channel by which the shell sends the preload a port for the page. */
export const PORT_CHANNEL = channelOf('corePort');

/** What travels back: the reply, or a refusal without a word about the inside of the shell. */
export type Answered =
  | { readonly ok: true; readonly reply: unknown }
  | { readonly ok: false; readonly refusal: Refusal };

export interface Refusal {
  /** 'sender': not a window of ours. 'question': not what the list of messages says. 'fault': a fault in the program. */
  readonly id: 'sender' | 'question' | 'fault';
  readonly words: string;
}
