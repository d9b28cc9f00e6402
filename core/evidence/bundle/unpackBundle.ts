// A stranger's zip archive, unpacked as if it meant harm: only the few names a bundle holds, each once, every byte
// counted while it comes out, nothing ever written anywhere (T-OPEN-3, T-OPEN-4). Libraries check neither names nor
// check sums nor sizes; the manifest's hashes are the check of what came out.

import { Inflate, Unzip, type UnzipDecoder, type UnzipFile } from 'fflate';
import { BUNDLE_NAME } from './manifest.ts';

export interface UnpackLimits {
  /** Bytes of all entries together. */
  readonly bytes: number;
  readonly entries: number;
}

export const BUNDLE_LIMITS: UnpackLimits = { bytes: 512 * 1024 * 1024, entries: 1003 };

export type Unpacked =
  | { readonly ok: true; readonly files: ReadonlyMap<string, Uint8Array> }
  /** `entry` is the name that is to blame, or null; `before` is what had come out whole by then. */
  | {
      readonly ok: false;
      readonly why: UnpackFault;
      readonly entry: string | null;
      readonly before: ReadonlyMap<string, Uint8Array>;
    };

export type UnpackFault =
  | 'notZip'
  | 'foreignName'
  | 'twice'
  | 'tooLarge'
  | 'tooMany'
  | 'foreignPacking'
  | 'damaged'
  | 'cut';

/** DEFLATE expands by 1032 : 1 at most. */
const MOST_EXPANSION = 1032;
/** As fast as larger ones, measured: eight times as fast as the small ones. */
const SLICE = 8192;
/** For where a limit is near: overshoots it by one mebibyte at most. */
const SMALL_SLICE = 1024;
const END_RECORD = 22;

/** The entries of a bundle. Never throws. */
export function unpackBundle(bytes: Uint8Array, limits: UnpackLimits = BUNDLE_LIMITS): Unpacked {
  const entries = entriesByEndRecord(bytes);
  if (entries === null)
    return { ok: false, why: startsAsZip(bytes) ? 'cut' : 'notZip', entry: null, before: new Map() };
  const unpacking = new Unpacking(limits);
  const unzip = new Unzip((file) => unpacking.enter(file));
  unzip.register(unpacking.decoder(8));
  unzip.register(unpacking.decoder(0));
  try {
    for (let at = 0; at < bytes.length && unpacking.fault === null; ) {
      const slice = bytes.subarray(at, at + (unpacking.room > SLICE * MOST_EXPANSION ? SLICE : SMALL_SLICE));
      at += slice.length;
      unzip.push(slice, at >= bytes.length);
    }
  } catch {
    unpacking.blame('damaged', unpacking.current);
  }
  return unpacking.result(entries);
}

function startsAsZip(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 3 && bytes[3] === 4;
}

/**
 * How many entries the record at the end of the archive counts; null where the last bytes are no such record, or it does
 * not lie where it says: the archive was cut, or something was hung on behind.
 */
function entriesByEndRecord(bytes: Uint8Array): number | null {
  const at = bytes.length - END_RECORD;
  if (at < 0 || !startsAsZip(bytes)) return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset + at, END_RECORD);
  const isRecord = view.getUint32(0, true) === 0x06054b50 && view.getUint16(20, true) === 0;
  const fits = view.getUint32(12, true) + view.getUint32(16, true) === at;
  return isRecord && fits ? view.getUint16(10, true) : null;
}

class Unpacking {
  fault: { readonly why: UnpackFault; readonly entry: string | null } | null = null;
  current: string | null = null;
  private readonly files = new Map<string, Growing>();
  private readonly ended = new Set<string>();
  private readonly limits: UnpackLimits;
  private total = 0;
  /** Bytes that entries were given room for: together no more than may come out. */
  private announced = 0;

  constructor(limits: UnpackLimits) {
    this.limits = limits;
  }

  /** Bytes that may still come out. */
  get room(): number {
    return this.limits.bytes - this.total;
  }

  private roomFor(bytes: number): number {
    const given = Math.max(0, Math.min(bytes, this.limits.bytes - this.announced));
    this.announced += given;
    return given;
  }

  blame(why: UnpackFault, entry: string | null): void {
    this.fault ??= { why, entry };
  }

  enter(file: UnzipFile): void {
    this.current = file.name;
    if (!BUNDLE_NAME.test(file.name)) this.blame('foreignName', file.name);
    if (this.files.has(file.name)) this.blame('twice', file.name);
    if (this.files.size >= this.limits.entries) this.blame('tooMany', file.name);
    // An entry whose length comes behind it was not written by this program.
    if ((file.compression !== 0 && file.compression !== 8) || file.size === undefined)
      this.blame('foreignPacking', file.name);
    if (this.fault !== null) return;
    this.files.set(file.name, new Growing(this.roomFor(file.originalSize ?? 0)));
    file.ondata = () => undefined;
    file.start();
  }

  /** A decoder for one way of packing that hands over what comes out, and counts it first. */
  decoder(compression: 0 | 8) {
    const unpacking = this;
    return class implements UnzipDecoder {
      static readonly compression = compression;
      ondata: UnzipDecoder['ondata'] = () => undefined;
      private readonly entry: string;
      private readonly inflate: Inflate | null;

      constructor(entry: string) {
        this.entry = entry;
        this.inflate = compression === 8 ? new Inflate((data) => unpacking.take(entry, data)) : null;
      }

      push(chunk: Uint8Array, final: boolean): void {
        if (unpacking.fault !== null) return;
        if (this.inflate === null) unpacking.take(this.entry, chunk);
        else this.inflate.push(chunk, final);
        if (final) unpacking.ended.add(this.entry);
      }
    };
  }

  take(entry: string, data: Uint8Array): void {
    this.total += data.length;
    if (this.total > this.limits.bytes) this.blame('tooLarge', entry);
    else this.files.get(entry)?.push(data);
  }

  result(entries: number): Unpacked {
    for (const name of this.files.keys()) if (!this.ended.has(name)) this.blame('cut', name);
    if (this.files.size !== entries) this.blame('damaged', this.current);
    const files = [...this.files].filter(([name]) => this.ended.has(name));
    const out = new Map(files.map(([name, grown]) => [name, grown.whole()]));
    return this.fault === null ? { ok: true, files: out } : { ok: false, ...this.fault, before: out };
  }
}

/** Bytes that come one after another, held once: with room for as many as are announced, and more where that was no truth. */
class Growing {
  private bytes: Uint8Array;
  private length = 0;

  constructor(announced: number) {
    this.bytes = new Uint8Array(announced);
  }

  push(data: Uint8Array): void {
    const length = this.length + data.length;
    if (length > this.bytes.length) {
      const wider = new Uint8Array(Math.max(length, 2 * this.bytes.length));
      wider.set(this.whole());
      this.bytes = wider;
    }
    this.bytes.set(data, this.length);
    this.length = length;
  }

  whole(): Uint8Array {
    return this.bytes.subarray(0, this.length);
  }
}
