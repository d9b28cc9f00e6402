import { BlockFault } from './blocks.ts';

/** What the first 64 bytes say. */
export interface Identification {
  /** 400 and up for MDF 4: 410 is version 4.10. */
  readonly version: number;
  /** False for a file whose writer was interrupted; counters in it may be wrong. */
  readonly closed: boolean;
  /** The length of the last block of data is not written down. */
  readonly openEnded: boolean;
}

const ID_BYTES = 64;
/** Bit of the flags at byte 60 (u16) of an unclosed file: length of the last DT block to be updated (ASAM MDF 4.1, from memory). */
const DATA_LENGTH_OPEN = 4;

/** True where the bytes begin as a measurement file of any version, closed or not. */
export function looksLikeMdf(bytes: Uint8Array): boolean {
  const start = String.fromCharCode(...bytes.subarray(0, 8));
  return start === 'MDF     ' || start === 'UnFinMF ';
}

/** The version that a file gives in letters at byte 8, where it is below 4: "3.30"; else null. */
export function versionBelow4(bytes: Uint8Array): string | null {
  const version = /^[1-3]\.\d\d/.exec(String.fromCharCode(...bytes.subarray(8, 12)));
  return version === null ? null : version[0];
}

/**
 * Reads the identification block: file mark at 0, version number (u16) at 28. Throws BlockFault for a version below
 * 4, whose blocks are laid out differently, or for a file shorter than the block. Layout: ASAM MDF 4.
 */
export function identification(file: DataView): Identification {
  if (file.byteLength < ID_BYTES) throw new BlockFault('The file ends inside its first block.', file.byteLength);
  const version = file.getUint16(28, true);
  if (version < 400) {
    throw new BlockFault(`This is version ${(version / 100).toFixed(2)}; only version 4 can be read.`, 28);
  }
  const closed = file.getUint8(0) === 'M'.charCodeAt(0);
  return { version, closed, openEnded: !closed && (file.getUint16(60, true) & DATA_LENGTH_OPEN) !== 0 };
}
