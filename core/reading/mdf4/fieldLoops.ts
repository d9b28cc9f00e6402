// Fields of records to raw numbers, one plain loop for each common kind, so that the compiler makes a tight one of each.

import type { ChannelDescription } from './channelBlock.ts';
import type { Records } from './recordFields.ts';

/** Puts the raw numbers of `rows` records from record `from` on at the beginning of `stage`. */
export type FieldLoop = (records: Records, from: number, rows: number, stage: Float64Array) => void;

/** The loop for a channel that is a number field of its records (recordFields.ts). */
export function fieldLoop(channel: ChannelDescription): FieldLoop {
  const { byteOffset, bitCount, bitOffset, dataType } = channel;
  const low = dataType % 2 === 0;
  if (dataType >= 4) return bitCount === 32 ? reals32(byteOffset, low) : reals64(byteOffset, low);
  const signed = dataType >= 2;
  if (bitOffset === 0 && bitCount === 8) return signed ? signed8(byteOffset) : unsigned8(byteOffset);
  if (bitOffset === 0 && bitCount === 16) return signed ? signed16(byteOffset, low) : unsigned16(byteOffset, low);
  if (bitOffset === 0 && bitCount === 32) return signed ? signed32(byteOffset, low) : unsigned32(byteOffset, low);
  return bitField(channel, signed, low);
}

const unsigned8 =
  (offset: number): FieldLoop =>
  ({ bytes, dataOffset, stride }, from, rows, stage) => {
    let at = from * stride + dataOffset + offset;
    for (let i = 0; i < rows; i++, at += stride) stage[i] = bytes.getUint8(at);
  };

const signed8 =
  (offset: number): FieldLoop =>
  ({ bytes, dataOffset, stride }, from, rows, stage) => {
    let at = from * stride + dataOffset + offset;
    for (let i = 0; i < rows; i++, at += stride) stage[i] = bytes.getInt8(at);
  };

const unsigned16 =
  (offset: number, low: boolean): FieldLoop =>
  ({ bytes, dataOffset, stride }, from, rows, stage) => {
    let at = from * stride + dataOffset + offset;
    for (let i = 0; i < rows; i++, at += stride) stage[i] = bytes.getUint16(at, low);
  };

const signed16 =
  (offset: number, low: boolean): FieldLoop =>
  ({ bytes, dataOffset, stride }, from, rows, stage) => {
    let at = from * stride + dataOffset + offset;
    for (let i = 0; i < rows; i++, at += stride) stage[i] = bytes.getInt16(at, low);
  };

const unsigned32 =
  (offset: number, low: boolean): FieldLoop =>
  ({ bytes, dataOffset, stride }, from, rows, stage) => {
    let at = from * stride + dataOffset + offset;
    for (let i = 0; i < rows; i++, at += stride) stage[i] = bytes.getUint32(at, low);
  };

const signed32 =
  (offset: number, low: boolean): FieldLoop =>
  ({ bytes, dataOffset, stride }, from, rows, stage) => {
    let at = from * stride + dataOffset + offset;
    for (let i = 0; i < rows; i++, at += stride) stage[i] = bytes.getInt32(at, low);
  };

const reals32 =
  (offset: number, low: boolean): FieldLoop =>
  ({ bytes, dataOffset, stride }, from, rows, stage) => {
    let at = from * stride + dataOffset + offset;
    for (let i = 0; i < rows; i++, at += stride) stage[i] = bytes.getFloat32(at, low);
  };

const reals64 =
  (offset: number, low: boolean): FieldLoop =>
  ({ bytes, dataOffset, stride }, from, rows, stage) => {
    let at = from * stride + dataOffset + offset;
    for (let i = 0; i < rows; i++, at += stride) stage[i] = bytes.getFloat64(at, low);
  };

/** Integers of any width at any bit. Above 2^53 they lose their last digits, as every double does. */
function bitField(channel: ChannelDescription, signed: boolean, low: boolean): FieldLoop {
  const { byteOffset, bitOffset, bitCount } = channel;
  const width = Math.ceil((bitOffset + bitCount) / 8);
  const mask = (1n << BigInt(bitCount)) - 1n;
  return ({ bytes, dataOffset, stride }, from, rows, stage) => {
    for (let i = 0; i < rows; i++) {
      const at = (from + i) * stride + dataOffset + byteOffset;
      let number = 0n;
      for (let k = 0; k < width; k++) number = (number << 8n) | BigInt(bytes.getUint8(at + (low ? width - 1 - k : k)));
      const bits = (number >> BigInt(bitOffset)) & mask;
      stage[i] = Number(signed ? BigInt.asIntN(bitCount, bits) : bits);
    }
  };
}
