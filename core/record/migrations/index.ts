// One file per step, registered here in order. The rest of the program knows only the newest form.

import { RECORD_VERSION } from '../schema.ts';
import { opinions } from './0002-opinions.ts';
import { blindReading } from './0003-blind-reading.ts';
import type { Migration } from './migration.ts';

/** A record of whatever version: an object with a version. */
export type AnyRecord = { readonly version: number } & Readonly<Record<string, unknown>>;

/** Every step since the first form. */
export const MIGRATIONS: readonly Migration[] = checkedMigrations([opinions, blindReading], RECORD_VERSION);

/** The list itself if it leads from version 1 to `newest` without a gap. Anything else is a mistake in the program. */
export function checkedMigrations(migrations: readonly Migration[], newest: number): readonly Migration[] {
  migrations.forEach(({ to }, i) => {
    if (to !== i + 2) throw new Error(`The step to version ${i + 2} of the record is missing or not in its place.`);
  });
  if (migrations.length + 1 !== newest) throw new Error(`The steps do not lead to version ${newest} of the record.`);
  return migrations;
}

/**
 * The record brought up to the newest version by every step it has not been through. A record of the newest version, or
 * of a newer one, comes back as it is.
 */
export function migrate(record: AnyRecord, migrations: readonly Migration[] = MIGRATIONS): AnyRecord {
  let now = record;
  for (const step of migrations) {
    if (now.version < step.to) now = { ...step.migrate(now), version: step.to };
  }
  return now;
}
