import type { Migration } from './migration.ts';

/** Nothing was signed before there were opinions. */
export const opinions: Migration = {
  to: 2,
  words: 'Opinions that readers signed, and their withdrawals, lie in a map of their own.',
  migrate: (old) => ({ ...old, opinions: {} }),
};
