import type { ChannelGroup } from './groupBlock.ts';
import type { Records } from './recordFields.ts';

/**
 * Records of several groups, mixed in one run of bytes and told apart by a record id of `idBytes` at the start of
 * each, sorted by group. Groups of changing length are stepped over. Reading stops at an id that no group has or at a record that
 * is cut short; `lostBytes` says how many bytes were left.
 */
export function sortRecords(
  data: Uint8Array,
  idBytes: number,
  groups: readonly ChannelGroup[],
): { records: Map<ChannelGroup, Records>; lostBytes: number } {
  const view = new DataView(data.buffer, data.byteOffset, data.byteLength);
  const byId = new Map(groups.map((group) => [group.recordId, group]));
  const starts = new Map<ChannelGroup, number[]>(groups.map((group) => [group, []]));
  let at = 0;
  while (at + idBytes <= data.length) {
    const group = byId.get(recordId(view, at, idBytes));
    const next = group ? endOfRecord(view, at + idBytes, group) : null;
    if (!group || next === null || next > data.length) break;
    if (!group.changingLength) starts.get(group)?.push(at + idBytes);
    at = next;
  }
  const records = new Map<ChannelGroup, Records>();
  for (const [group, places] of starts) records.set(group, gathered(data, group, places));
  return { records, lostBytes: data.length - at };
}

/** Records of a block that holds one group only. The last one is left out where it is cut short. */
export function plainRecords(
  data: Uint8Array,
  group: ChannelGroup,
  idBytes: number,
): { records: Records; lostBytes: number } {
  const stride = idBytes + group.dataBytes + group.invalidationBytes;
  const count = stride > 0 ? Math.floor(data.length / stride) : 0;
  const bytes = new DataView(data.buffer, data.byteOffset, data.byteLength);
  const records = { bytes, count, stride, dataOffset: idBytes, dataBytes: group.dataBytes };
  return { records, lostBytes: data.length - count * stride };
}

function recordId(view: DataView, at: number, idBytes: number): number {
  if (idBytes === 1) return view.getUint8(at);
  if (idBytes === 2) return view.getUint16(at, true);
  if (idBytes === 4) return view.getUint32(at, true);
  return Number(view.getBigUint64(at, true));
}

function endOfRecord(view: DataView, at: number, group: ChannelGroup): number | null {
  if (!group.changingLength) return at + group.dataBytes + group.invalidationBytes;
  if (at + 4 > view.byteLength) return null;
  return at + 4 + view.getUint32(at, true);
}

function gathered(data: Uint8Array, group: ChannelGroup, places: readonly number[]): Records {
  const stride = group.dataBytes + group.invalidationBytes;
  const bytes = new Uint8Array(places.length * stride);
  for (const [index, place] of places.entries()) bytes.set(data.subarray(place, place + stride), index * stride);
  return {
    bytes: new DataView(bytes.buffer),
    count: places.length,
    stride,
    dataOffset: 0,
    dataBytes: group.dataBytes,
  };
}
