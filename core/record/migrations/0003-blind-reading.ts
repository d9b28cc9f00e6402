import type { Migration } from './migration.ts';

/** Nobody read blind before it could be recorded. What was signed stays as it was signed. */
export const blindReading: Migration = {
  to: 3,
  words: 'A blind reading of a received record is kept with the time of the first look.',
  migrate: (old) => ({ ...old, blindReading: null }),
};
