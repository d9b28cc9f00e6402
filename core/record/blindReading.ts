// Reading a colleague's record blind first. This is courtesy and honest book-keeping, not secrecy: the record holds all of
// it, and any editor shows it. What is hidden is decided here and nowhere else.

import type { Opinion } from './opinionSchema.ts';
import type { VehicleRecord } from './schema.ts';

/**
 * The record as it is when a blind reading of it begins at `instant` (RFC 3339 with offset). Windows and notes that it holds
 * now are the first reader's; those of the second reader come later and are shown.
 */
export function startBlindReading(record: VehicleRecord, instant: string): VehicleRecord {
  const before = { windows: Object.keys(record.windows), notes: Object.keys(record.notes) };
  return { ...record, blindReading: { startedAt: instant, lookedAt: null, before } };
}

/** Whether the record is being read blind: a blind reading has begun, and nobody has looked or signed since. */
export function isReadBlind({ blindReading }: Pick<VehicleRecord, 'blindReading'>): boolean {
  return blindReading !== null && blindReading.lookedAt === null;
}

/** The record once its reader has looked at `instant`. The first look counts: later ones leave the record as it is. */
export function lookedAt(record: VehicleRecord, instant: string): VehicleRecord {
  const { blindReading } = record;
  if (blindReading === null || blindReading.lookedAt !== null) return record;
  return { ...record, blindReading: { ...blindReading, lookedAt: instant } };
}

/**
 * What may be shown of a record: all of it, or while it is read blind all but the first reader's windows and notes, every
 * finding that was kept, and everything signed. It is for showing only and never saved. A record that is not read blind is
 * given back itself.
 */
export function shownOf(record: VehicleRecord): VehicleRecord {
  const { blindReading } = record;
  if (blindReading === null || !isReadBlind(record)) return record;
  const { windows, notes } = blindReading.before;
  return {
    ...record,
    windows: without(record.windows, windows),
    notes: without(record.notes, notes),
    findings: {},
    opinions: {},
  };
}

/** What an opinion that is signed now says of the blind reading it came from. Empty where there was none. */
export function readingNow({ blindReading }: VehicleRecord): Pick<Opinion, 'reading'> {
  if (blindReading === null) return {};
  const { startedAt, lookedAt: looked } = blindReading;
  return { reading: { startedAt, lookedAt: looked } };
}

function without<T>(entries: Readonly<Record<string, T>>, ids: readonly string[]): Record<string, T> {
  const hidden = new Set(ids);
  return Object.fromEntries(Object.entries(entries).filter(([id]) => !hidden.has(id)));
}
