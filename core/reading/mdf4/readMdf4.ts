import { type Block, BlockFault, blockAt, chain, expectBlock } from './blocks.ts';
import { type ChannelDescription, channelDescription } from './channelBlock.ts';
import { AS_IT_IS, type Conversion, conversion } from './conversion.ts';
import { dataBytes, type FileEnd, type RoomBudget } from './dataBytes.ts';
import { type ChannelGroup, channelGroup, dataGroup } from './groupBlock.ts';
import { identification } from './identification.ts';
import { isTimeMaster, type MdfTimes, masterTimes } from './masterTimes.ts';
import { type Breathe, type Decoded, decodeField, isNumberField, type Records, roomForField } from './recordFields.ts';
import { plainRecords, sortRecords } from './sortRecords.ts';
import { textAt } from './text.ts';

/** One channel with its own times, both of the same length. */
export interface MdfChannel extends Decoded {
  readonly name: string;
  readonly unit: string;
  readonly values: Float32Array | Float64Array;
  readonly times: MdfTimes;
}

export interface MdfContents {
  readonly channels: readonly MdfChannel[];
  /** Start of the recording, nanoseconds since 1970, and whether that clock is local; null where it says 0. */
  readonly start: {
    readonly nanoseconds: bigint;
    readonly local: boolean;
    readonly offsetMinutes: number | null;
  } | null;
  readonly records: number;
  /** Sentences about what was left out. */
  readonly remarks: readonly string[];
  readonly closed: boolean;
  /** The file ends before its data do. */
  readonly cut: boolean;
}

export interface MdfLimits {
  /** Bytes that compressed blocks may grow to and values may take, all together. */
  readonly roomBytes: number;
  decodeUtf8(bytes: Uint8Array): string;
  readonly breathe: Breathe;
}

const HEADER_AT = 64;

/**
 * Reads a measurement file of version 4 that lies whole in memory: every channel that is a number and belongs to a
 * group with a time master. Groups without one, and channels of text, are left out with a remark. Throws BlockFault,
 * with the byte, where the file's structure cannot be followed; RoomFault where its values need more room than is left of
 * `roomBytes`; and whatever `breathe` throws. Never loops. Beside the file and `roomBytes` it takes, for one data group at a
 * time, at most its data twice more: where they lie in pieces, and where records of several groups are mixed.
 */
export async function readMdf4(bytes: Uint8Array, limits: MdfLimits): Promise<MdfContents> {
  const file = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const { closed, openEnded } = identification(file);
  const end: FileEnd = { openEnded, cut: false };
  const header = expectBlock(file, HEADER_AT, 'HD');
  const budget: RoomBudget = { bytesLeft: limits.roomBytes };
  const channels: MdfChannel[] = [];
  const remarks: string[] = [];
  let records = 0;
  for (const block of chain(file, header.links[0] ?? 0, 'DG')) {
    for await (const { group, found } of groupsOf(file, block, budget, end, limits, remarks)) {
      records += found.count;
      channels.push(...(await channelsOf(file, group, found, limits, budget, remarks)));
    }
  }
  return { channels, start: startOf(header), records, remarks, closed, cut: end.cut };
}

async function* groupsOf(
  file: DataView,
  block: Block,
  budget: RoomBudget,
  end: FileEnd,
  { breathe }: MdfLimits,
  remarks: string[],
) {
  const { firstChannelGroup, dataLink, idBytes } = dataGroup(block);
  const groups = chain(file, firstChannelGroup, 'CG').map(channelGroup);
  const [only] = groups;
  if (!only || dataLink === 0) return;
  if (![0, 1, 2, 4, 8].includes(idBytes)) throw new BlockFault('The size of the record ids is not known.', block.at);
  const data = await dataBytes(file, dataLink, budget, end, breathe);
  if (groups.length === 1 && !only.changingLength) {
    const { records, lostBytes } = plainRecords(data, only, idBytes);
    tellLost(lostBytes, remarks);
    yield { group: only, found: records };
    return;
  }
  const { records, lostBytes } = sortRecords(data, idBytes || 1, groups);
  tellLost(lostBytes, remarks);
  for (const [group, found] of records) yield { group, found };
}

function tellLost(bytes: number, remarks: string[]): void {
  if (bytes > 0) remarks.push(`${bytes} bytes at the end of a data block belong to no whole record.`);
}

interface NamedChannel {
  readonly of: ChannelDescription;
  readonly name: string;
  readonly unit: string;
  readonly convert: Conversion | null;
}

async function channelsOf(
  file: DataView,
  group: ChannelGroup,
  records: Records,
  limits: MdfLimits,
  budget: RoomBudget,
  remarks: string[],
): Promise<MdfChannel[]> {
  if (group.changingLength || records.count === 0) return [];
  const all = chain(file, group.firstChannel, 'CN').map((block) => named(file, block, limits));
  const master = all.find(({ of }) => isTimeMaster(of));
  if (!master) {
    remarks.push(`A group of ${all.length} channels has no time and was left out.`);
    return [];
  }
  const times = await masterTimes(master.of, master.convert ?? AS_IT_IS, records, budget, limits.breathe);
  const channels: MdfChannel[] = [];
  for (const channel of all) {
    if (channel === master) continue;
    if (!isNumberField(channel.of, records) || channel.convert === null) {
      remarks.push(`Channel "${channel.name}" holds no numbers that can be read and was left out.`);
      continue;
    }
    const values = roomForField(channel.of, records.count, budget);
    const decoded = await decodeField(channel.of, records, channel.convert, values, limits.breathe);
    channels.push({ name: channel.name, unit: channel.unit, values, ...decoded, times });
  }
  return channels;
}

function named(file: DataView, block: Block, limits: MdfLimits): NamedChannel {
  const of = channelDescription(block);
  const convert = of.conversionLink === 0 ? AS_IT_IS : conversion(expectBlock(file, of.conversionLink, 'CC'));
  const ownUnit = textAt(file, of.unitLink, limits.decodeUtf8);
  const unit = ownUnit || unitOfConversion(file, of.conversionLink, limits);
  return { of, name: textAt(file, of.nameLink, limits.decodeUtf8), unit, convert };
}

/** A conversion may name the unit instead of the channel: links name, unit, comment, inverse. */
function unitOfConversion(file: DataView, at: number, limits: MdfLimits): string {
  return at === 0 ? '' : textAt(file, blockAt(file, at).links[1] ?? 0, limits.decodeUtf8);
}

/** HD data: start time u64 ns, zone i16 min, summer i16 min, flags u8 (bit 0 local, bit 1 offsets valid). */
function startOf(header: Block): MdfContents['start'] {
  if (header.data.byteLength < 13) return null;
  const nanoseconds = header.data.getBigUint64(0, true);
  if (nanoseconds === 0n) return null;
  const flags = header.data.getUint8(12);
  const offset = header.data.getInt16(8, true) + header.data.getInt16(10, true);
  return { nanoseconds, local: (flags & 1) !== 0, offsetMinutes: flags & 2 ? offset : null };
}
