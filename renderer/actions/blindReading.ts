// The end of a blind reading: by looking, or by signing an opinion of one's own.

import type { Program } from '../program/program.ts';
import { readsBlind } from '../state/recordStore.ts';
import { askOffers } from './holdCapture.ts';

/** Shows all of the vehicle that is read blind. The record keeps when, and that it was before signing. */
export async function lookNow({ record, clock, notices, saver }: Program): Promise<void> {
  record.getState().look(clock.instant());
  notices.getState().say('Everything is shown. The record keeps the time at which you looked.');
  await saver.flush();
}

/** Asks for the offers that were not asked for, once a blind reading has ended. The returned function stops it. */
export function keepOffers(program: Program): () => void {
  return program.record.subscribe((now, before) => {
    if (!readsBlind(before) || readsBlind(now)) return;
    for (const captureId of Object.keys(program.captures.getState().held)) void askOffers(program, captureId);
  });
}
