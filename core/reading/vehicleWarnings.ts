import type { Channel } from '../capture/channel.ts';
import type { CaptureWarning } from '../capture/warnings.ts';
import { plainWords } from './naming/concepts.ts';
import { shownText } from './shownText.ts';

/** Columns of research drives that say whose row it is. */
const WHOSE = /^(?:veh|vehicle|fahrzeug|vehicule|vehiculo|car) ?(?:id|no|nr|num|number|nummer|numero)$/;

/** Tells of a table that holds the rows of several vehicles: whatever is drawn and judged belongs to none of them. */
export function vehicleWarnings(channels: readonly Channel[]): CaptureWarning[] {
  const found = channels.find(
    ({ name, role, facts }) => role === 'other' && facts.max > facts.min && WHOSE.test(plainWords(name)),
  );
  if (found === undefined) return [];
  const { name, facts } = found;
  const detail = `“${shownText(name, 60)}” changes between ${facts.min} and ${facts.max}: the file holds rows of several vehicles, which are read as one capture. Save each vehicle as a file of its own.`;
  return [{ id: 'other', detail, row: null, count: 1, repaired: false }];
}
