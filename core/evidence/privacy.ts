// What belongs to a person and is left out of a copy unless it is asked for (T-PRIV-1).

import type { VehicleRecord } from '../record/schema.ts';
import type { Cell } from './sheet.ts';
import type { Included } from './sheetInput.ts';
import { textCell } from './words/numbers.ts';

/** Characters of a vehicle number that tell one vehicle from its twins. */
const PRIVATE_END = 6;

export const LEFT_OUT: Cell = { kind: 'none', words: 'left out of this copy' };

/** A private text: itself where it is included, else that it was left out; "not recorded" where there is none. */
export function privateCell(text: string, included: boolean): Cell {
  return text.trim() === '' || included ? textCell(text) : LEFT_OUT;
}

/** The vehicle number, without its last six characters unless they are included. */
export function vinCell(vin: string, included: boolean): Cell {
  const whole = vin.trim();
  if (whole === '' || included) return textCell(whole);
  const shown = [...whole].slice(0, -PRIVATE_END).join('');
  return shown === '' ? LEFT_OUT : { kind: 'text', text: `${shown}${'·'.repeat(PRIVATE_END)} (last six left out)` };
}

/**
 * The record without the private fields that are not included: they are empty, and the vehicle number ends early. What was
 * signed stays whole, names and all: without them its chain would not hold.
 */
export function withoutPrivate(record: VehicleRecord, include: Included): VehicleRecord {
  const { vin, plate, customer, complaint } = record.identity;
  return {
    ...record,
    identity: {
      ...record.identity,
      vin: include.vin ? vin : [...vin.trim()].slice(0, -PRIVATE_END).join(''),
      plate: include.plate ? plate : '',
      customer: include.customer ? customer : '',
      complaint: include.complaint ? complaint : '',
    },
  };
}

/** In words, what is recorded and was left out. */
export function leftOutWords(
  { identity, opinions }: Pick<VehicleRecord, 'identity' | 'opinions'>,
  include: Included,
): string[] {
  const signers = Object.values(opinions).map(({ author }) => author.name);
  const fields: readonly (readonly [string, string, boolean])[] = [
    ['the last six characters of the vehicle number', identity.vin, include.vin],
    ['the number plate', identity.plate, include.plate],
    ["the customer's name and address", identity.customer, include.customer],
    ["the customer's complaint", identity.complaint, include.complaint],
    ['the names and licences under signed opinions', signers.join(''), include.signers],
  ];
  return fields.filter(([, text, included]) => text.trim() !== '' && !included).map(([words]) => words);
}
