// What becomes of a record that came in a bundle. A record that is kept here is never written over by one from elsewhere.

import { sameValue } from './sameValue.ts';
import type { VehicleRecord } from './schema.ts';

/** What came, and what is kept here under the same id. */
export interface Receipt {
  readonly received: VehicleRecord;
  /**
   * The record kept here under the id of the received one; null where that vehicle is not known here, 'lost' where it is and no
   * save of it can be read.
   */
  readonly known: VehicleRecord | 'lost' | null;
  /** 1 to 64 characters, unlike every vehicle's that is kept here. */
  readonly newId: string;
  /** When it is taken in, RFC 3339 with offset. */
  readonly instant: string;
}

/** Room for the mark behind a name, within the 500 characters that a name may have. */
const LONGEST_NAME = 450;

/**
 * The record to keep. A vehicle that is not known here is taken in as it stands, but for a blind reading of whoever sent
 * it, which is theirs. One that is known stays as it is: the received record becomes a vehicle of its own beside it, under
 * the new id and with a name that says when it came, also where what is kept of it is lost; where both say the same there is nothing to take in, and the known
 * record itself is given back.
 */
export function receiveRecord({ received, known, newId, instant }: Receipt): VehicleRecord {
  const own = { ...received, blindReading: null };
  if (known === null) return own;
  if (known !== 'lost' && saysTheSame(received, known)) return known;
  const { identity } = own;
  return { ...own, id: newId, identity: { ...identity, name: markedName(identity.name, instant) } };
}

/** Whether two records say the same of a vehicle, whoever read which of them blind. */
export function saysTheSame(one: VehicleRecord, other: VehicleRecord): boolean {
  return sameValue({ ...one, blindReading: null }, { ...other, blindReading: null });
}

function markedName(name: string, instant: string): string {
  const whole = name.slice(0, LONGEST_NAME).replace(/[\uD800-\uDBFF]$/, ''); // no half of a character at the cut
  return `${whole} (received ${instant.slice(0, 10)})`;
}
