import type { Capture } from '../capture/capture.ts';
import type { Bank } from '../capture/roles.ts';
import { frontChannel, rearChannel } from '../measures/windowData.ts';
import { blocker } from './blockersOf.ts';
import type { Blocker } from './finding.ts';

/**
 * Blockers for the sensors of a bank that none of the captures recorded, whether or not there is a window to score; none
 * without captures. A sensor without a bank counts for each.
 */
export function missingSensors(captures: readonly Capture[], bank: Bank): Blocker[] {
  if (captures.length === 0) return [];
  const rear = captures.some((capture) => rearChannel(capture, bank) ?? rearChannel(capture, null));
  const front = captures.some((capture) => frontChannel(capture, bank) ?? frontChannel(capture, null));
  return [...(rear ? [] : [blocker('noRearSensor', null)]), ...(front ? [] : [blocker('noFrontSensor', null)])];
}
