/** What is wrong with a measurement file, and at which byte. Thrown inside this folder, caught by readMdf4. */
export class BlockFault extends Error {
  constructor(
    readonly what: string,
    readonly byte: number,
  ) {
    super(what);
  }
}

/** One block of the file. */
export interface Block {
  /** Two letters: "HD", "DG", "CN" ... */
  readonly id: string;
  readonly at: number;
  /** Byte addresses of other blocks; 0 is none. */
  readonly links: readonly number[];
  /** The block's data after its links. A view, not a copy. */
  readonly data: DataView;
}

const HEADER_BYTES = 24;
const LINK_BYTES = 8;

/**
 * The block at byte `at`: "##XX", 4 reserved bytes, length with header (u64), count of links (u64), links, data.
 * Throws BlockFault where the header is no header, or its length or links do not fit in the file.
 */
export function blockAt(file: DataView, at: number): Block {
  if (!Number.isSafeInteger(at) || at < 0 || at + HEADER_BYTES > file.byteLength) {
    throw new BlockFault('A link leads outside the file.', at);
  }
  if (file.getUint8(at) !== 0x23 || file.getUint8(at + 1) !== 0x23) {
    throw new BlockFault('A block does not start with its mark.', at);
  }
  const id = String.fromCharCode(file.getUint8(at + 2), file.getUint8(at + 3));
  const length = unsigned64(file, at + 8);
  const linkCount = unsigned64(file, at + 16);
  if (length < HEADER_BYTES || at + length > file.byteLength) {
    throw new BlockFault(`The length of block ${id} does not fit in the file.`, at);
  }
  if (HEADER_BYTES + linkCount * LINK_BYTES > length) {
    throw new BlockFault(`Block ${id} claims more links than fit in it.`, at);
  }
  const links: number[] = [];
  for (let i = 0; i < linkCount; i++) links.push(unsigned64(file, at + HEADER_BYTES + i * LINK_BYTES));
  const dataAt = at + HEADER_BYTES + linkCount * LINK_BYTES;
  return { id, at, links, data: new DataView(file.buffer, file.byteOffset + dataAt, at + length - dataAt) };
}

/**
 * Whether the file ends before the block at `at` does, or before it begins. A link to no place at all, or to what does not
 * begin as a block, is no such end.
 */
export function endsBefore(file: DataView, at: number): boolean {
  if (!Number.isSafeInteger(at) || at < 0) return false;
  if (at + HEADER_BYTES > file.byteLength) return true;
  const marked = file.getUint8(at) === 0x23 && file.getUint8(at + 1) === 0x23;
  return marked && at + unsigned64(file, at + 8) > file.byteLength;
}

/** The data of a block without links from its beginning to the end of the file, whatever length it claims. */
export function dataToTheEnd(file: DataView, at: number): Uint8Array {
  return new Uint8Array(file.buffer, file.byteOffset + at + HEADER_BYTES, file.byteLength - at - HEADER_BYTES);
}

/** Two letters of the block at `at`, or "" where no block begins there. */
export function idAt(file: DataView, at: number): string {
  if (!Number.isSafeInteger(at) || at < 0 || at + HEADER_BYTES > file.byteLength) return '';
  if (file.getUint8(at) !== 0x23 || file.getUint8(at + 1) !== 0x23) return '';
  return String.fromCharCode(file.getUint8(at + 2), file.getUint8(at + 3));
}

/** The same, and the block must have this name. */
export function expectBlock(file: DataView, at: number, id: string): Block {
  const block = blockAt(file, at);
  if (block.id !== id) throw new BlockFault(`A block ${id} was expected and a block ${block.id} found.`, at);
  return block;
}

/**
 * The chain of blocks that begins at `first` and goes on by each block's first link. A chain that bites its own tail
 * throws BlockFault.
 */
export function chain(file: DataView, first: number, id: string): Block[] {
  const blocks: Block[] = [];
  const seen = new Set<number>();
  for (let at = first; at !== 0; at = blocks[blocks.length - 1]?.links[0] ?? 0) {
    if (seen.has(at)) throw new BlockFault(`The chain of blocks ${id} leads back to itself.`, at);
    seen.add(at);
    blocks.push(expectBlock(file, at, id));
  }
  return blocks;
}

/** Unsigned 64-bit number; above 2^53 it becomes infinite, so that every bounds check refuses it. */
export function unsigned64(view: DataView, at: number): number {
  const value = view.getBigUint64(at, true);
  return value <= BigInt(Number.MAX_SAFE_INTEGER) ? Number(value) : Number.POSITIVE_INFINITY;
}

/** Throws BlockFault unless the block holds at least `bytes` of data. */
export function needData(block: Block, bytes: number): void {
  if (block.data.byteLength < bytes) throw new BlockFault(`Block ${block.id} is too short.`, block.at);
}
