// The three things an edit does to a map of entries. Each gives back the same map where nothing changes.

interface Entry {
  readonly id: string;
}

/** The map with `entry` under its own id, in place of what lay there. */
export function withEntry<T extends Entry>(map: Record<string, T>, entry: T): Record<string, T> {
  return { ...map, [entry.id]: entry };
}

/** The map with the entry `id` changed by `change`; the same map where there is no such entry or it stays as it was. */
export function withChanged<T extends Entry>(
  map: Record<string, T>,
  id: string,
  change: (entry: T) => T,
): Record<string, T> {
  const entry = Object.hasOwn(map, id) ? map[id] : undefined;
  if (entry === undefined) return map;
  const next = change(entry);
  return next === entry ? map : { ...map, [id]: next };
}

/** The map without the entries that `gone` holds of; the same map where it holds of none. */
export function without<T extends Entry>(map: Record<string, T>, gone: (entry: T) => boolean): Record<string, T> {
  const kept = Object.entries(map).filter(([, entry]) => !gone(entry));
  return kept.length === Object.keys(map).length ? map : Object.fromEntries(kept);
}
