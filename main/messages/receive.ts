// The one place where messages from a window come in. Sender and arguments are checked here, and the reply on its way
// out; behind it a handler gets what the list of messages promises and nothing else.

import type { z } from 'zod';
import { SHELL_REQUESTS } from '../../core/bridge/shellMessages.ts';
import { type Answered, channelOf, PRELOAD_REQUESTS, type Refusal } from './preloadRequests.ts';
import { isOurSender, type SenderEvent } from './senderCheck.ts';

export const REQUESTS = { ...SHELL_REQUESTS, ...PRELOAD_REQUESTS };
type Requests = typeof REQUESTS;
export type RequestName = keyof Requests;

/** One function for each message: its argument and its reply have been and will be checked. */
export type Handlers = {
  readonly [Name in RequestName]: (
    ask: z.output<Requests[Name]['ask']>,
  ) => z.input<Requests[Name]['reply']> | Promise<z.input<Requests[Name]['reply']>>;
};

/** The part of Electron's ipcMain that is used. */
export interface MessageDoor<Event extends SenderEvent> {
  handle(channel: string, listener: (event: Event, ...given: unknown[]) => Promise<Answered>): void;
}

export interface ReceiveParts {
  readonly handlers: Handlers;
  isOurContents(sender: unknown): boolean;
  /** Called for every message that may come in: a page that asks something has begun to listen. */
  heard(): void;
  /** Told of faults in handlers, which the window hears of in general words only. */
  tellFault(fault: unknown): void;
}

export function receiveAll<Event extends SenderEvent>(door: MessageDoor<Event>, parts: ReceiveParts): void {
  for (const name of Object.keys(REQUESTS)) {
    if (!isRequestName(name)) continue;
    door.handle(channelOf(name), (event, ...given) => answerMessage(name, event, given, parts));
  }
}

/** Never rejects: whatever is sent, the answer is a reply or a refusal. */
export async function answerMessage(
  name: RequestName,
  event: SenderEvent,
  given: readonly unknown[],
  { handlers, isOurContents, heard, tellFault }: ReceiveParts,
): Promise<Answered> {
  if (!isOurSender(event, isOurContents)) return refuse('sender', 'This page may not ask the program for anything.');
  heard();
  try {
    return await answerChecked(name, given, handlers);
  } catch (fault) {
    tellFault(fault);
    return refuse('fault', 'The program could not do this, through a fault of its own.');
  }
}

async function answerChecked<Name extends RequestName>(
  name: Name,
  given: readonly unknown[],
  handlers: Handlers,
): Promise<Answered> {
  const { ask, reply } = REQUESTS[name];
  const asked = ask.safeParse(given[0]);
  if (given.length !== 1 || !asked.success) return refuse('question', `This is not how ${name} is asked for.`);
  // The compiler cannot follow that a name's schema and a name's handler belong together; the type of Handlers says so.
  const handle = handlers[name] as (checked: unknown) => unknown;
  return { ok: true, reply: reply.parse(await handle(asked.data)) };
}

function isRequestName(name: string): name is RequestName {
  return Object.hasOwn(REQUESTS, name);
}

function refuse(id: Refusal['id'], words: string): Answered {
  return { ok: false, refusal: { id, words } };
}
