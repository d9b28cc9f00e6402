// The saves that stand behind a record: the last ten, and the last of each day for thirty days. A name tells when and of
// what, sorts by time, and is made here alone.

const KEEP_LAST = 10;
const KEEP_DAYS = 30;
const DAY_MS = 24 * 60 * 60 * 1000;
const NAME = /^(\d{4})(\d\d)(\d\d)T(\d\d)(\d\d)(\d\d)(\d{3})Z-[0-9a-f]{12}\.json$/;

/** "20261124T225941123Z-0123456789ab.json", from the time of the save and the SHA-256 of its bytes. */
export function generationName(savedAt: string, sha256: string): string {
  const instant = new Date(savedAt);
  const stamp = Number.isNaN(instant.getTime()) ? new Date(0).toISOString() : instant.toISOString();
  return `${stamp.replace(/[-:.]/g, '')}-${sha256.slice(0, 12)}.json`;
}

/** When a generation of this name was saved, RFC 3339, or null for a name that is none of ours. */
export function generationTime(name: string): string | null {
  const parts = NAME.exec(name);
  if (parts === null) return null;
  const [, year, month, day, hour, minute, second, milli] = parts;
  return `${year}-${month}-${day}T${hour}:${minute}:${second}.${milli}Z`;
}

/** Youngest first; names that are none of ours are left out. */
export function youngestFirst(names: readonly string[]): string[] {
  return names
    .filter((name) => NAME.test(name))
    .sort()
    .reverse();
}

/** Which of these saves are no longer needed at `nowMs`. Never one of the youngest ten; days are those of UTC. */
export function superfluous(names: readonly string[], nowMs: number): string[] {
  const daysSeen = new Set<string>();
  return youngestFirst(names).filter((name, place) => {
    const day = name.slice(0, 8);
    const lastOfDay = !daysSeen.has(day);
    daysSeen.add(day);
    if (place < KEEP_LAST) return false;
    const ageMs = nowMs - Date.parse(generationTime(name) ?? '');
    return !lastOfDay || ageMs > KEEP_DAYS * DAY_MS;
  });
}
