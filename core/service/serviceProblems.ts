// Why the service may refuse a question, in words.

import type { Outcome, Problem } from '../reading/problem.ts';

type Refusal = { readonly ok: false; readonly problem: Problem };

const refuse = (id: string, what: string, where: string, doNext: string): Refusal => ({
  ok: false,
  problem: { id, what, where, doNext },
});

export const notOpen = (): Refusal =>
  refuse('notOpen', 'This capture is not open any more.', 'the capture', 'Open it again.');

export const noSuchChannel = (name: string): Refusal =>
  refuse('noSuchChannel', 'This capture has no such channel.', name, 'Choose one of the channels it has.');

/** Not an error: it is what the person asked for. */
export const cancelled = (name: string): Refusal =>
  refuse('cancelled', 'Reading was cancelled.', name, 'Open the capture again when you want it.');

export const badQuestion = (name: string): Refusal =>
  refuse('badQuestion', 'The window asked for something that does not exist.', name, 'Start the program again.');

export const failed = (name: string): Refusal =>
  refuse(
    'failed',
    'This could not be worked out, through a fault in the program.',
    name,
    'Your work is kept. Try another window of the capture, and tell the makers what you did.',
  );

/** A reply, as the outcome of its question. */
export function answered<T>(value: T): Outcome<T> {
  return { ok: true, value };
}
