import { wideRoom } from '../../capture/columnRoom.ts';
import { BlockFault } from './blocks.ts';
import { CHANNEL_TYPES, type ChannelDescription, SYNC_TIME } from './channelBlock.ts';
import { type Conversion, physical } from './conversion.ts';
import type { RoomBudget } from './dataBytes.ts';
import { type Breathe, decodeField, isNumberField, type Records, takeRoom } from './recordFields.ts';

/** Times as the file counts them, s. One object for all channels of a group. */
export type MdfTimes =
  /** Record i lies at startS + i * stepS, in ascending order. */
  | { readonly kind: 'counted'; readonly startS: number; readonly stepS: number; readonly length: number }
  | { readonly kind: 'listed'; readonly timesS: Float64Array };

/** Whether a channel gives the times of its group. */
export function isTimeMaster(channel: ChannelDescription): boolean {
  const master = channel.type === CHANNEL_TYPES.master || channel.type === CHANNEL_TYPES.virtualMaster;
  return master && channel.sync === SYNC_TIME;
}

/**
 * The times of a group by its master, s. A virtual master has no bytes: its raw value is the number of the record. Throws
 * BlockFault where the master is no number, and RoomFault where its times need more room than is left of `budget`.
 */
export async function masterTimes(
  of: ChannelDescription,
  conversion: Conversion,
  records: Records,
  budget: RoomBudget,
  breathe: Breathe,
): Promise<MdfTimes> {
  const { count } = records;
  if (of.type === CHANNEL_TYPES.virtualMaster) {
    const { offset: startS, factor: stepS, other } = conversion;
    if (other === null && stepS > 0 && count > 2) return { kind: 'counted', startS, stepS, length: count };
    takeRoom(budget, 8 * count);
    const counted = wideRoom(count);
    for (let i = 0; i < count; i++) counted[i] = physical(conversion, i);
    return { kind: 'listed', timesS: counted };
  }
  if (!isNumberField(of, records)) throw new BlockFault('The time channel is not a number.', of.at);
  takeRoom(budget, 8 * count);
  const timesS = wideRoom(count);
  await decodeField(of, records, conversion, timesS, breathe);
  return { kind: 'listed', timesS };
}
