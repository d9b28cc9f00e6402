// One file per step, registered here in order. The rest of the program knows only the newest form.

import { RECORD_VERSION } from '../schema.ts';

/** A record of whatever version: an object with a version. */
export type AnyRecord = { readonly version: number } & Readonly<Record<string, unknown>>;

/** One step: makes a record of version `to` out of one of version `to - 1`. Pure; leaves its argument alone. */
export interface Migration {
  readonly to: number;
  /** What changes, in a sentence, as in FORMAT.md. */
  readonly words: string;
  migrate(old: Readonly<Record<string, unknown>>): Record<string, unknown>;
}

/** Every step since the first released form. Version 1 is the first, so there is none yet. */
export const MIGRATIONS: readonly Migration[] = checkedMigrations([], RECORD_VERSION);

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
