import { type Block, needData } from './blocks.ts';

/** Kinds of channel that matter here; see the block's type byte. */
export const CHANNEL_TYPES = { fixed: 0, changingLength: 1, master: 2, virtualMaster: 3, virtual: 6 } as const;

/** What a master channel counts. */
export const SYNC_TIME = 1;

/** A channel's place in a record and its links. */
export interface ChannelDescription {
  /** Byte of its block, for messages. */
  readonly at: number;
  readonly nameLink: number;
  readonly conversionLink: number;
  readonly unitLink: number;
  /** Link to the channels it is made of: arrays and structures, whose own record bytes are not a number. */
  readonly composed: boolean;
  readonly type: number;
  readonly sync: number;
  /** 0, 1 unsigned; 2, 3 signed; 4, 5 real; even is low byte first. Others are text or bytes. */
  readonly dataType: number;
  readonly bitOffset: number;
  readonly byteOffset: number;
  readonly bitCount: number;
  /** Every value is declared wrong by the writer. */
  readonly allWrong: boolean;
  /** Position of the bit that declares one value wrong, or null. */
  readonly wrongBit: number | null;
}

const ALL_WRONG_FLAG = 1;
const WRONG_BIT_FLAG = 2;

/**
 * CN block: links next, component, name, source, conversion, data, unit, comment; then type, sync, data type, bit
 * offset, byte offset u32, bit count u32, flags u32, position of the invalidation bit u32.
 */
export function channelDescription(block: Block): ChannelDescription {
  needData(block, 20);
  const flags = block.data.getUint32(12, true);
  return {
    at: block.at,
    nameLink: block.links[2] ?? 0,
    conversionLink: block.links[4] ?? 0,
    unitLink: block.links[6] ?? 0,
    composed: (block.links[1] ?? 0) !== 0,
    type: block.data.getUint8(0),
    sync: block.data.getUint8(1),
    dataType: block.data.getUint8(2),
    bitOffset: block.data.getUint8(3),
    byteOffset: block.data.getUint32(4, true),
    bitCount: block.data.getUint32(8, true),
    allWrong: (flags & ALL_WRONG_FLAG) !== 0,
    wrongBit: (flags & WRONG_BIT_FLAG) !== 0 ? block.data.getUint32(16, true) : null,
  };
}
