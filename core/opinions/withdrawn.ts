import type { Opinion, Signed, Withdrawal } from '../record/opinionSchema.ts';

/** The opinions among what was signed, in the order given. */
export function opinionsOf(entries: readonly Signed[]): Opinion[] {
  return entries.filter((entry) => entry.kind === 'opinion');
}

/** The first withdrawal of the opinion `id` in the order given; null where it stands. */
export function withdrawalOf(entries: readonly Signed[], id: string): Withdrawal | null {
  for (const entry of entries) if (entry.kind === 'withdrawal' && entry.withdraws === id) return entry;
  return null;
}
