/**
 * A readonly list in the order given that refuses, by name, a second member of the same id. `what` names the members in
 * the complaint. A broken list is a mistake in the program, so it throws when the program starts.
 */
export function registry<Member>(
  what: string,
  idOf: (member: Member) => string,
  members: readonly Member[],
): readonly Member[] {
  const seen = new Set<string>();
  for (const member of members) {
    const id = idOf(member);
    if (seen.has(id)) throw new Error(`There are two of ${what} "${id}".`);
    seen.add(id);
  }
  return members;
}
