import { type Block, BlockFault, blockAt, chain, expectBlock } from './blocks.ts';
import { CHANNEL_TYPES, type ChannelDescription, channelDescription, SYNC_TIME } from './channelBlock.ts';
import { type Conversion, conversion } from './conversion.ts';
import { dataBytes, type InflateBudget } from './dataBytes.ts';
import { type ChannelGroup, channelGroup, dataGroup } from './groupBlock.ts';
import { identification } from './identification.ts';
import { isNumberField, type Records, rawNumbers } from './recordFields.ts';
import { plainRecords, sortRecords } from './sortRecords.ts';
import { textAt } from './text.ts';

/** One channel with its own times, both of the same length. Times are as the file counts them, s. */
export interface MdfChannel {
  readonly name: string;
  readonly unit: string;
  readonly values: Float64Array;
  readonly timesS: Float64Array;
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
}

export interface MdfLimits {
  /** Bytes that compressed blocks may grow to, all together. */
  readonly inflateBytes: number;
  decodeUtf8(bytes: Uint8Array): string;
}

const HEADER_AT = 64;

/**
 * Reads a measurement file of version 4 that lies whole in memory: every channel that is a number and belongs to a
 * group with a time master. Groups without one, and channels of text, are left out with a remark. Throws BlockFault,
 * with the byte, where the file's structure cannot be followed. Never loops and never takes more memory than the file
 * plus `inflateBytes` plus 16 bytes a value.
 */
export function readMdf4(bytes: Uint8Array, limits: MdfLimits): MdfContents {
  const file = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const { closed } = identification(file);
  const header = expectBlock(file, HEADER_AT, 'HD');
  const budget: InflateBudget = { bytesLeft: limits.inflateBytes };
  const channels: MdfChannel[] = [];
  const remarks: string[] = [];
  let records = 0;
  for (const block of chain(file, header.links[0] ?? 0, 'DG')) {
    for (const { group, found } of groupsOf(file, block, budget, remarks)) {
      records += found.count;
      channels.push(...channelsOf(file, group, found, limits, remarks));
    }
  }
  return { channels, start: startOf(header), records, remarks, closed };
}

function* groupsOf(file: DataView, block: Block, budget: InflateBudget, remarks: string[]) {
  const { firstChannelGroup, dataLink, idBytes } = dataGroup(block);
  const groups = chain(file, firstChannelGroup, 'CG').map(channelGroup);
  const [only] = groups;
  if (!only || dataLink === 0) return;
  if (![0, 1, 2, 4, 8].includes(idBytes)) throw new BlockFault('The size of the record ids is not known.', block.at);
  const data = dataBytes(file, dataLink, budget);
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

function channelsOf(
  file: DataView,
  group: ChannelGroup,
  records: Records,
  limits: MdfLimits,
  remarks: string[],
): MdfChannel[] {
  if (group.changingLength || records.count === 0) return [];
  const all = chain(file, group.firstChannel, 'CN').map((block) => named(file, block, limits));
  const master = all.find(({ of }) => isTimeMaster(of));
  if (!master) {
    remarks.push(`A group of ${all.length} channels has no time and was left out.`);
    return [];
  }
  const timesS = timesOf(master, records);
  const channels: MdfChannel[] = [];
  for (const channel of all) {
    if (channel === master) continue;
    if (!isNumberField(channel.of, records) || channel.convert === null) {
      remarks.push(`Channel "${channel.name}" holds no numbers that can be read and was left out.`);
      continue;
    }
    const values = rawNumbers(channel.of, records);
    for (let i = 0; i < values.length; i++) values[i] = channel.convert(values[i] ?? Number.NaN);
    channels.push({ name: channel.name, unit: channel.unit, values, timesS });
  }
  return channels;
}

function named(file: DataView, block: Block, limits: MdfLimits): NamedChannel {
  const of = channelDescription(block);
  const convert =
    of.conversionLink === 0 ? (raw: number) => raw : conversion(expectBlock(file, of.conversionLink, 'CC'));
  const ownUnit = textAt(file, of.unitLink, limits.decodeUtf8);
  const unit = ownUnit || unitOfConversion(file, of.conversionLink, limits);
  return { of, name: textAt(file, of.nameLink, limits.decodeUtf8), unit, convert };
}

/** A conversion may name the unit instead of the channel: links name, unit, comment, inverse. */
function unitOfConversion(file: DataView, at: number, limits: MdfLimits): string {
  return at === 0 ? '' : textAt(file, blockAt(file, at).links[1] ?? 0, limits.decodeUtf8);
}

function isTimeMaster(channel: ChannelDescription): boolean {
  const master = channel.type === CHANNEL_TYPES.master || channel.type === CHANNEL_TYPES.virtualMaster;
  return master && channel.sync === SYNC_TIME;
}

/** A virtual master has no bytes: its raw value is the number of the record. */
function timesOf(master: NamedChannel, records: Records): Float64Array {
  const convert = master.convert ?? ((raw: number) => raw);
  if (master.of.type === CHANNEL_TYPES.virtualMaster)
    return Float64Array.from({ length: records.count }, (_, i) => convert(i));
  if (!isNumberField(master.of, records)) throw new BlockFault('The time channel is not a number.', HEADER_AT);
  return rawNumbers(master.of, records).map(convert);
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
