import { strFromU8 } from 'fflate';

/** Bytes at the end of an archive that are kept: the directory of a thousand entries with usual names. */
const KEPT = 256 * 1024;
/** Signatures and lengths of APPNOTE.TXT 4.3.12 (central directory header) and 4.3.16 (end of central directory record). */
const ENTRY = 0x02014b50;
const ENTRY_BYTES = 46;
const END = 0x06054b50;
const END_BYTES = 22;

/** The directory at the end of a zip archive, as far as check sums go: streaming readers have passed the entry by then. */
export class ZipDirectory {
  private pieces: Uint8Array[] = [];
  private length = 0;

  /** True once bytes were noted. */
  get begun(): boolean {
    return this.length > 0;
  }

  /** Notes the next packed bytes. */
  took(slice: Uint8Array): void {
    this.pieces.push(slice.slice());
    this.length += slice.length;
    while (this.length - (this.pieces[0]?.length ?? 0) >= KEPT) this.length -= this.pieces.shift()?.length ?? 0;
  }

  /**
   * The CRC-32 of the first entry of that name, as fflate gives names. Null where the archive was cut off before its
   * directory, or the directory has no such name.
   */
  sumOf(name: string): number | null {
    const tail = this.tail();
    const view = new DataView(tail.buffer);
    let end = tail.length - END_BYTES;
    while (end >= 0 && view.getUint32(end, true) !== END) end--;
    if (end < 0) return null;
    let at = end - view.getUint32(end + 12, true);
    while (at >= 0 && at + ENTRY_BYTES <= end && view.getUint32(at, true) === ENTRY) {
      const nameEnd = at + ENTRY_BYTES + view.getUint16(at + 28, true);
      const inUtf8 = (view.getUint16(at + 8, true) & 0x800) !== 0;
      if (strFromU8(tail.subarray(at + ENTRY_BYTES, nameEnd), !inUtf8) === name) return view.getUint32(at + 16, true);
      at = nameEnd + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
    }
    return null;
  }

  private tail(): Uint8Array<ArrayBuffer> {
    const tail = new Uint8Array(this.length);
    let at = 0;
    for (const piece of this.pieces) {
      tail.set(piece, at);
      at += piece.length;
    }
    return tail;
  }
}
