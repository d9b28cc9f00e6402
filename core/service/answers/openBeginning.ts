import { givingWay } from '../givingWay.ts';
import { outlineOf } from '../outlineOf.ts';
import { answered, cancelled } from '../serviceProblems.ts';
import { whileOpen } from '../whileOpen.ts';
import type { Answer } from './answer.ts';

/** Read in a few hundredths of a second, and yet some tens of thousands of rows. */
const BEGINNING_BYTES = 2 * 1024 * 1024;

/** Reads the first rows of a capture and holds them. What they are worth is not told: they are for the eye only. */
export const openBeginning: Answer<'openBeginning'> = ({ token, choice }, { askId, core, host, held, isCancelled }) =>
  whileOpen(token, 'firstRows', host, async ({ source }) => {
    const read = await core.readCapture(givingWay(source, host), { choice, isCancelled, mostBytes: BEGINNING_BYTES });
    if (isCancelled()) return cancelled(source.name);
    return read.ok ? answered(outlineOf(held.hold(read.value.capture, askId))) : read;
  });
