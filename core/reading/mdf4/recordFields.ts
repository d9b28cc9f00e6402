import { wideRoom } from '../../capture/columnRoom.ts';
import type { ChannelDescription } from './channelBlock.ts';

/** Records of one group, one after the other. */
export interface Records {
  readonly bytes: DataView;
  readonly count: number;
  /** Bytes from one record to the next, ids and invalidation bytes included. */
  readonly stride: number;
  /** Where the data of a record begins after its id. */
  readonly dataOffset: number;
  readonly dataBytes: number;
}

/** True where a channel's field is a number that fits in its record. */
export function isNumberField(channel: ChannelDescription, records: Records): boolean {
  const { dataType, bitCount, bitOffset, byteOffset } = channel;
  if (dataType > 5 || channel.composed || bitCount < 1 || bitCount > 64 || bitOffset > 7) return false;
  if (dataType >= 4 && bitCount !== 32 && bitCount !== 64) return false;
  return byteOffset + Math.ceil((bitOffset + bitCount) / 8) <= records.dataBytes;
}

/**
 * Raw numbers of one channel, one a record. Integers of up to 64 bits at any bit offset, low byte first (even data type)
 * or high byte first; reals of 32 and 64 bits. Integers above 2^53 lose their last digits, as every double does.
 * Values whose invalidation bit is set are NaN. The channel must be a number field of these records.
 */
export function rawNumbers(channel: ChannelDescription, records: Records): Float64Array {
  const values = wideRoom(records.count);
  const read = reader(channel);
  for (let i = 0; i < records.count; i++) {
    const at = records.dataOffset + i * records.stride;
    values[i] = isWrong(channel, records, at) ? Number.NaN : read(records.bytes, at + channel.byteOffset);
  }
  return values;
}

function isWrong(channel: ChannelDescription, records: Records, recordAt: number): boolean {
  if (channel.allWrong) return true;
  if (channel.wrongBit === null) return false;
  const byte = channel.wrongBit >>> 3;
  // A position past the record's own invalidation bytes means nothing; the value then stands.
  if (byte >= records.stride - records.dataOffset - records.dataBytes) return false;
  return (records.bytes.getUint8(recordAt + records.dataBytes + byte) & (1 << (channel.wrongBit & 7))) !== 0;
}

function reader(channel: ChannelDescription): (bytes: DataView, at: number) => number {
  const low = channel.dataType % 2 === 0;
  if (channel.dataType >= 4) {
    if (channel.bitCount === 32) return (bytes, at) => bytes.getFloat32(at, low);
    return (bytes, at) => bytes.getFloat64(at, low);
  }
  const signed = channel.dataType >= 2;
  if (channel.bitOffset === 0) {
    const whole = wholeNumber(channel.bitCount, signed, low);
    if (whole) return whole;
  }
  return (bytes, at) => bitField(bytes, at, channel, signed, low);
}

function wholeNumber(bits: number, signed: boolean, low: boolean) {
  if (bits === 8) return (bytes: DataView, at: number) => (signed ? bytes.getInt8(at) : bytes.getUint8(at));
  if (bits === 16)
    return (bytes: DataView, at: number) => (signed ? bytes.getInt16(at, low) : bytes.getUint16(at, low));
  if (bits === 32)
    return (bytes: DataView, at: number) => (signed ? bytes.getInt32(at, low) : bytes.getUint32(at, low));
  return null;
}

function bitField(bytes: DataView, at: number, channel: ChannelDescription, signed: boolean, low: boolean): number {
  const width = Math.ceil((channel.bitOffset + channel.bitCount) / 8);
  let number = 0n;
  for (let i = 0; i < width; i++) number = (number << 8n) | BigInt(bytes.getUint8(at + (low ? width - 1 - i : i)));
  const bits = (number >> BigInt(channel.bitOffset)) & ((1n << BigInt(channel.bitCount)) - 1n);
  return Number(signed ? BigInt.asIntN(channel.bitCount, bits) : bits);
}
