import type { Bank, Role } from '../capture/roles.ts';

/** One value that a data item carries. */
export interface DataValue {
  /** Stable key: "rpm", "stftB1", "o2B1S1". */
  readonly key: string;
  /** For people: "Engine speed". */
  readonly name: string;
  readonly unit: string;
  readonly role: Role;
  readonly bank: Bank;
  readonly sensor: number | null;
  /** Number from the item's data bytes (as many as `bytes` says), or null where they say "not used". */
  decode(data: Uint8Array): number | null;
}

/** A data item: its number, how many data bytes it has, and the values in them. */
export interface DataItem {
  readonly pid: number;
  readonly bytes: number;
  readonly values: readonly DataValue[];
}

/** Byte `index` of the data, 0 where the answer is too short; callers check the length first. */
export function byteAt(data: Uint8Array, index: number): number {
  return data[index] ?? 0;
}

/** Bytes index and index + 1, high byte first. */
export function wordAt(data: Uint8Array, index: number): number {
  return byteAt(data, index) * 256 + byteAt(data, index + 1);
}

/** How a vehicle numbers its oxygen sensors: by data item 13 (two banks of four) or 1D (four banks of two). */
export type SensorPlacement = 'twoBanks' | 'fourBanks';
