import type { Mending } from './mending.ts';

const HALF_DAY_S = 43_200;
const DAY_S = 86_400;

/**
 * Adds a day to times of day, s, behind each midnight, in place. A late row from before midnight keeps its day. `placed`
 * gets the same unless a person wants the clock as it was written.
 */
export function unwrapMidnight(
  raw: Float64Array,
  placed: Float64Array | null,
  { asWritten, rowOf, warnings }: Mending,
): void {
  const undone = asWritten.has('clockPastMidnight');
  let days = 0;
  let first = -1;
  let previous = raw[0] ?? 0;
  for (let i = 1; i < raw.length; i++) {
    const value = raw[i] ?? 0;
    if (value < previous - HALF_DAY_S) {
      days++;
      if (first < 0) first = i;
    } else if (value > previous + HALF_DAY_S && days > 0) days--;
    previous = value;
    raw[i] = value + days * DAY_S;
    if (placed !== null && !undone) placed[i] = raw[i] ?? 0;
  }
  if (first < 0) return;
  const follows = undone
    ? 'its times stand as it wrote them, so the rows after midnight lie before the others.'
    : 'times go on into the next day.';
  warnings.push({
    id: 'clockPastMidnight',
    detail: `The clock passed midnight; ${follows}`,
    row: rowOf(first),
    count: 1,
    repaired: !undone,
  });
}
