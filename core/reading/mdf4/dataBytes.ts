import { Unzlib } from 'fflate';
import { type Block, BlockFault, blockAt, dataToTheEnd, endsBefore, idAt, needData, unsigned64 } from './blocks.ts';
import type { Breathe } from './recordFields.ts';
import { undoTranspose } from './transpose.ts';

/** Bytes that compressed blocks and values of one file may take, all together. */
export interface RoomBudget {
  bytesLeft: number;
}

/** What is known of the end of a file while its data are gathered. */
export interface FileEnd {
  /** The writer was interrupted before it wrote down how long its last block of data is: it goes on to the end. */
  readonly openEnded: boolean;
  /** Set where the file ends before its data do. */
  cut: boolean;
}

/**
 * The data of one data group as one run of bytes: a DT block as it stands, a DZ block inflated, a DL list of either in
 * order, or an HL block that heads such a list. Records may run across the joints, so the pieces are joined. Link 0
 * gives no bytes. Where the file ends too early, what is there of plain data is given and `end.cut` set. A piece that is
 * not data or comes twice, a list that leads back to itself, or data past the budget throws BlockFault.
 */
export async function dataBytes(
  file: DataView,
  at: number,
  budget: RoomBudget,
  end: FileEnd,
  breathe: Breathe,
): Promise<Uint8Array> {
  const pieces: Uint8Array[] = [];
  for (const piece of piecesAt(file, at, budget, end)) {
    pieces.push(piece);
    await breathe();
  }
  if (pieces.length === 1 && pieces[0]) return pieces[0];
  const whole = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let filled = 0;
  for (const piece of pieces) {
    whole.set(piece, filled);
    filled += piece.length;
  }
  return whole;
}

function* piecesAt(file: DataView, at: number, budget: RoomBudget, end: FileEnd): Generator<Uint8Array> {
  if (at === 0) return;
  const id = idAt(file, at);
  if (id === 'HL') yield* listed(file, blockAt(file, at).links[0] ?? 0, budget, end);
  else if (id === 'DL') yield* listed(file, at, budget, end);
  else if (id === '' || PIECES.has(id)) yield pieceAt(file, at, budget, end);
  else throw new BlockFault(`A block of data was expected and a block ${id} found.`, at);
}

const PIECES: ReadonlySet<string> = new Set(['DT', 'SD', 'DZ']);

/** A list goes on by its first link; its other links are its data. */
function* listed(file: DataView, first: number, budget: RoomBudget, end: FileEnd): Generator<Uint8Array> {
  const seen = new Set<number>();
  for (let at = first; at !== 0; ) {
    if (seen.has(at)) throw new BlockFault('A list of data leads back to itself.', at);
    seen.add(at);
    if (at !== first && endsBefore(file, at)) {
      end.cut = true;
      return;
    }
    const list = blockAt(file, at);
    if (list.id !== 'DL') throw new BlockFault(`A list of data was expected and a block ${list.id} found.`, at);
    for (const link of list.links.slice(1)) {
      if (link === 0) continue;
      // A small file could otherwise name one block until no memory holds it all.
      if (seen.has(link)) throw new BlockFault('A list of data names the same block twice.', link);
      seen.add(link);
      const id = idAt(file, link);
      if (id !== '' && !PIECES.has(id)) throw new BlockFault(`A list of data names a block ${id}.`, link);
      if (id === '' && endsBefore(file, link)) end.cut = true;
      else yield pieceAt(file, link, budget, end);
      if (end.cut) return;
    }
    at = list.links[0] ?? 0;
  }
}

/** One block of data; of a plain one that the file ends in, what is there. */
function pieceAt(file: DataView, at: number, budget: RoomBudget, end: FileEnd): Uint8Array {
  const plain = idAt(file, at) === 'DT' || idAt(file, at) === 'SD';
  if (plain && end.openEnded && unsigned64(file, at + 8) <= EMPTY_BLOCK) return dataToTheEnd(file, at);
  if (plain && endsBefore(file, at)) {
    end.cut = true;
    return dataToTheEnd(file, at);
  }
  const block = blockAt(file, at);
  return plain ? bytesOf(block) : inflated(block, budget);
}

/** Length of a block that has nothing behind its header: what stands there until the writer comes back. */
const EMPTY_BLOCK = 24;

function bytesOf(block: Block): Uint8Array {
  return new Uint8Array(block.data.buffer, block.data.byteOffset, block.data.byteLength);
}

/**
 * A DZ block: original id (2 bytes), kind (0 deflate, 1 transposed deflate), reserved, parameter u32, original length
 * u64, compressed length u64, then a zlib stream. Room is only taken for what the budget allows, and the stream is
 * stopped when it gives more than it declared.
 */
function inflated(block: Block, budget: RoomBudget): Uint8Array {
  needData(block, 24);
  const kind = block.data.getUint8(2);
  const columns = block.data.getUint32(4, true);
  const originalLength = unsigned64(block.data, 8);
  const storedLength = unsigned64(block.data, 16);
  if (kind > 1) throw new BlockFault(`Compression kind ${kind} is not known.`, block.at);
  if (24 + storedLength > block.data.byteLength) {
    throw new BlockFault('A compressed block claims more bytes than it has.', block.at);
  }
  if (originalLength > budget.bytesLeft) {
    throw new BlockFault('The compressed data would grow past the memory set aside for it.', block.at);
  }
  budget.bytesLeft -= originalLength;
  const stored = new Uint8Array(block.data.buffer, block.data.byteOffset + 24, storedLength);
  const plain = inflateExactly(stored, originalLength, block.at);
  return kind === 1 ? undoTranspose(plain, columns) : plain;
}

/** How much of a stream is fed at once: small, because one slice can grow a thousandfold before it is counted. */
const SLICE_BYTES = 1024;

function inflateExactly(stored: Uint8Array, length: number, at: number): Uint8Array {
  const plain = new Uint8Array(length);
  let filled = 0;
  const stream = new Unzlib((piece) => {
    if (filled + piece.length > length) throw new BlockFault('A compressed block holds more than it declares.', at);
    plain.set(piece, filled);
    filled += piece.length;
  });
  try {
    for (let from = 0; from < stored.length; from += SLICE_BYTES) {
      stream.push(stored.subarray(from, from + SLICE_BYTES), from + SLICE_BYTES >= stored.length);
    }
  } catch (cause) {
    if (cause instanceof BlockFault) throw cause;
    throw new BlockFault('A compressed block cannot be unpacked.', at);
  }
  if (filled !== length) throw new BlockFault('A compressed block holds less than it declares.', at);
  return plain;
}
