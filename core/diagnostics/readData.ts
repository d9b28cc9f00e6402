import type { DataItem, DataValue } from './dataItem.ts';

/** One value found in an answer. */
export interface FoundValue {
  readonly pid: number;
  readonly of: DataValue;
  readonly value: number;
}

/** What an answer of service 01 held. */
export interface FoundData {
  readonly values: readonly FoundValue[];
  /** Items that were present, whether or not they carry values, with their data bytes. */
  readonly items: readonly { readonly pid: number; readonly data: Uint8Array }[];
  /** First item number that the table does not know, after which the rest of the answer cannot be told apart; or null. */
  readonly unknownPid: number | null;
  /** True where the last item had fewer bytes than it should. */
  readonly cut: boolean;
}

const SERVICE_CURRENT_DATA = 0x41;

/**
 * Reads one answer of service 01: 41, then for each item its number and its data bytes; several items may stand in
 * one answer (ISO 15765-4 allows six). `message` starts with the service byte and is free of padding. An answer of
 * another service, or an empty one, gives nothing. Values that an item marks as not used are left out.
 */
export function readData(message: Uint8Array, items: ReadonlyMap<number, DataItem>): FoundData {
  const values: FoundValue[] = [];
  const present: { pid: number; data: Uint8Array }[] = [];
  if (message[0] !== SERVICE_CURRENT_DATA) return { values, items: present, unknownPid: null, cut: false };
  let at = 1;
  while (at < message.length) {
    const pid = message[at] ?? 0;
    const item = items.get(pid);
    if (!item) return { values, items: present, unknownPid: pid, cut: false };
    const data = message.subarray(at + 1, at + 1 + item.bytes);
    if (data.length < item.bytes) return { values, items: present, unknownPid: null, cut: true };
    present.push({ pid, data });
    for (const of of item.values) {
      const value = of.decode(data);
      if (value !== null) values.push({ pid, of, value });
    }
    at += 1 + item.bytes;
  }
  return { values, items: present, unknownPid: null, cut: false };
}

/**
 * Numbers of the data items that a support answer (00, 20, 40 ...) declares: bit A7 is the first item of the block of
 * 32 that follows `pid`, bit D0 the last. SAE J1979. Fewer than four bytes give fewer items.
 */
export function supportedPids(pid: number, data: Uint8Array): number[] {
  const found: number[] = [];
  for (let bit = 0; bit < data.length * 8; bit++) {
    const byte = data[bit >> 3] ?? 0;
    if (byte & (0x80 >> (bit & 7))) found.push(pid + bit + 1);
  }
  return found;
}
