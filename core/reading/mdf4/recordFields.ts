import { type BlockExtremes, blocksFor } from '../../capture/blockExtremes.ts';
import { narrowRoom, wideRoom } from '../../capture/columnRoom.ts';
import { type ColumnRange, copyNarrow, copyWide } from '../text/copyColumn.ts';
import type { ChannelDescription } from './channelBlock.ts';
import type { Conversion } from './conversion.ts';
import type { RoomBudget } from './dataBytes.ts';
import { fieldLoop } from './fieldLoops.ts';

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

/** What was found of a channel's values while they were decoded. */
export interface Decoded {
  readonly range: ColumnRange;
  readonly blocks: BlockExtremes;
}

/** Called between pieces of work: gives way to others, and throws where reading is to stop. */
export type Breathe = () => Promise<void>;

/** Records that are decoded at once, so that nobody waits for longer than some milliseconds. */
const ROWS_A_BREATH = 1 << 18;
const ROWS_ON_STAGE = 1 << 12;

/** True where a channel's field is a number that fits in its record. */
export function isNumberField(channel: ChannelDescription, records: Records): boolean {
  const { dataType, bitCount, bitOffset, byteOffset } = channel;
  if (dataType > 5 || channel.composed || bitCount < 1 || bitCount > 64 || bitOffset > 7) return false;
  if (dataType >= 4 && bitCount !== 32 && bitCount !== 64) return false;
  return byteOffset + Math.ceil((bitOffset + bitCount) / 8) <= records.dataBytes;
}

/**
 * Room for a channel's values, 4 bytes each where the field itself has no more digits than they hold: integers of up to 16
 * bits and reals of 32.
 */
export function roomForField(
  { dataType, bitCount }: ChannelDescription,
  count: number,
  budget: RoomBudget,
): Float32Array | Float64Array {
  const narrow = bitCount <= (dataType >= 4 ? 32 : 16);
  takeRoom(budget, (narrow ? 4 : 8) * count);
  return narrow ? narrowRoom(count) : wideRoom(count);
}

/** Takes `bytes` out of the budget; throws RoomFault where they are not left. */
export function takeRoom(budget: RoomBudget, bytes: number): void {
  if (bytes > budget.bytesLeft) throw new RoomFault(bytes - budget.bytesLeft);
  budget.bytesLeft -= bytes;
}

/** More memory is needed than may be used. Thrown inside this folder, caught by the layout. */
export class RoomFault extends Error {
  readonly bytesMissing: number;
  constructor(bytesMissing: number) {
    super('More memory is needed than may be used.');
    this.name = 'RoomFault';
    this.bytesMissing = bytesMissing;
  }
}

/**
 * Physical values of one channel, one a record, into `values`, which has a place for each record. Integers of up to 64
 * bits at any bit offset, low byte first (even data type) or high byte first; reals of 32 and 64 bits. Values whose
 * invalidation bit is set are NaN. The channel must be a number field of these records.
 */
export async function decodeField(
  channel: ChannelDescription,
  records: Records,
  conversion: Conversion,
  values: Float32Array | Float64Array,
  breathe: Breathe,
): Promise<Decoded> {
  const { count } = records;
  const blocks = blocksFor(count);
  const range: ColumnRange = { finite: 0, min: Number.POSITIVE_INFINITY, max: Number.NEGATIVE_INFINITY };
  const loop = fieldLoop(channel);
  const stage = new Float64Array(Math.min(count, ROWS_ON_STAGE));
  for (let from = 0; from < count; from += ROWS_ON_STAGE) {
    if (from % ROWS_A_BREATH === 0) await breathe();
    const rows = Math.min(ROWS_ON_STAGE, count - from);
    loop(records, from, rows, stage);
    convert(stage, rows, conversion);
    markWrong(channel, records, from, rows, stage);
    const on = { stage, first: 0, stride: 1, rows };
    const copied =
      values instanceof Float32Array
        ? copyNarrow(on, values, from, blocks, range)
        : copyWide(on, values, from, blocks, range);
    range.finite += copied;
  }
  return { range, blocks };
}

function convert(stage: Float64Array, rows: number, { offset, factor, other }: Conversion): void {
  if (other !== null) for (let i = 0; i < rows; i++) stage[i] = other(stage[i] ?? Number.NaN);
  else if (offset !== 0 || factor !== 1)
    for (let i = 0; i < rows; i++) stage[i] = offset + factor * (stage[i] ?? Number.NaN);
}

function markWrong(
  { allWrong, wrongBit }: ChannelDescription,
  { bytes, stride, dataOffset, dataBytes }: Records,
  from: number,
  rows: number,
  stage: Float64Array,
): void {
  if (allWrong) stage.fill(Number.NaN);
  if (allWrong || wrongBit === null) return;
  const byte = wrongBit >>> 3;
  // A position past the record's own invalidation bytes means nothing; the values then stand.
  if (byte >= stride - dataOffset - dataBytes) return;
  const bit = 1 << (wrongBit & 7);
  let at = from * stride + dataOffset + dataBytes + byte;
  for (let i = 0; i < rows; i++, at += stride) if ((bytes.getUint8(at) & bit) !== 0) stage[i] = Number.NaN;
}
