import type { Capture } from '../capture/capture.ts';
import type { Channel } from '../capture/channel.ts';
import type { Bank } from '../capture/roles.ts';
import { frontChannel, rearChannel } from '../measures/windowData.ts';
import { blocker } from './blockersOf.ts';
import type { Blocker } from './finding.ts';

type Find = (capture: Capture, bank: Bank) => Channel | null;

/**
 * Blockers for the sensors of a bank that none of the captures recorded, whether or not there is a window to score; none
 * without captures. A sensor without a bank counts for each. Where the other bank has the sensor, that is said with it.
 */
export function missingSensors(captures: readonly Capture[], bank: Bank): Blocker[] {
  if (captures.length === 0) return [];
  return [...missing('noRearSensor', rearChannel), ...missing('noFrontSensor', frontChannel)];

  function missing(id: string, find: Find): Blocker[] {
    const recorded = (of: Bank): boolean => captures.some((capture) => find(capture, of) !== null);
    if (recorded(bank) || recorded(null)) return [];
    const other = bank === null ? null : bank === 1 ? 2 : 1;
    return [blocker(id, recorded(other) ? `That is so for bank ${bank}; bank ${other} has one.` : null)];
  }
}
