import type { Capture } from '../../core/capture/capture.ts';
import type { RepairId } from '../../core/capture/repairs.ts';
import { sampleCount, timeAt } from '../../core/capture/timeBase.ts';
import { withAsWritten } from '../../core/record/asWritten.ts';
import { readText } from './readText.ts';

/** A text or bytes read with some repairs undone, as the window does it: by its header, with the columns recognised. */
export async function readAsWritten(text: string | Uint8Array, undone: readonly RepairId[]): Promise<Capture> {
  const { capture } = await readText(text);
  const choice = withAsWritten(null, capture.layout.headerKey, undone);
  return (await readText(text, { choice })).capture;
}

/** Time and value of every sample of a channel, the first where none is named. */
export function samplesOf({ channels }: Capture, at = 0): [timeS: number, value: number][] {
  const channel = channels[at];
  if (channel === undefined) throw new Error(`no channel ${at}`);
  const { time, values } = channel;
  return Array.from({ length: sampleCount(time) }, (_, i) => [timeAt(time, i), values[i] ?? Number.NaN]);
}
