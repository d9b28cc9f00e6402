import { type Block, needData, unsigned64 } from './blocks.ts';

/** A data group: where its records lie and how many bytes name the group of each record. */
export interface DataGroup {
  readonly firstChannelGroup: number;
  readonly dataLink: number;
  /** 0 where the block holds records of one group only, else 1, 2, 4 or 8. */
  readonly idBytes: number;
}

/** A channel group: records of one shape. */
export interface ChannelGroup {
  readonly firstChannel: number;
  readonly recordId: number;
  /** Records the header declares; an unclosed file may hold more or fewer. */
  readonly cycles: number;
  /** True for a group of signal values of changing length: each record is a u32 length and that many bytes. */
  readonly changingLength: boolean;
  readonly dataBytes: number;
  readonly invalidationBytes: number;
}

const CHANGING_LENGTH_FLAG = 1;

/** DG block: links next, channel group, data, comment; then the size of the record id. */
export function dataGroup(block: Block): DataGroup {
  needData(block, 1);
  return {
    firstChannelGroup: block.links[1] ?? 0,
    dataLink: block.links[2] ?? 0,
    idBytes: block.data.getUint8(0),
  };
}

/** CG block: links next, channel, name, source, sample reduction, comment; then id, cycles, flags and sizes. */
export function channelGroup(block: Block): ChannelGroup {
  needData(block, 32);
  return {
    firstChannel: block.links[1] ?? 0,
    recordId: unsigned64(block.data, 0),
    cycles: unsigned64(block.data, 8),
    changingLength: (block.data.getUint16(16, true) & CHANGING_LENGTH_FLAG) !== 0,
    dataBytes: block.data.getUint32(24, true),
    invalidationBytes: block.data.getUint32(28, true),
  };
}
