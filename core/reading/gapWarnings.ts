import type { Channel } from '../capture/channel.ts';
import { gapOf } from '../capture/gap.ts';
import { sampleCount, type TimeBase, timeAt } from '../capture/timeBase.ts';
import type { CaptureWarning } from '../capture/warnings.ts';

/** More sentences than this about gaps tell a person nothing. */
const MOST = 4;

/**
 * Gaps in the recording, once for each time base. `rowOf` gives the line of a row of the file; it is asked only where
 * every row has a sample, `rows` in all.
 */
export function gapWarnings(
  channels: readonly Channel[],
  rows: number,
  rowOf: (index: number) => number | null,
): CaptureWarning[] {
  const seen = new Set<TimeBase>();
  const found: CaptureWarning[] = [];
  for (const { time, facts } of channels) {
    if (seen.has(time) || time.kind === 'regular' || facts.medianRateHz === 0) continue;
    seen.add(time);
    const warning = gaps(time, gapOf(facts), sampleCount(time) === rows ? rowOf : () => null);
    if (warning !== null && !found.some(({ detail }) => detail === warning.detail)) found.push(warning);
  }
  return found.slice(0, MOST);
}

function gaps(time: TimeBase, least: number, rowOf: (index: number) => number | null): CaptureWarning | null {
  let count = 0;
  let first = -1;
  let longest = 0;
  let longestAt = 0;
  for (let i = 1; i < sampleCount(time); i++) {
    const step = timeAt(time, i) - timeAt(time, i - 1);
    if (step <= least) continue;
    count++;
    if (first < 0) first = i;
    if (step > longest) {
      longest = step;
      longestAt = timeAt(time, i - 1);
    }
  }
  if (count === 0) return null;
  const detail = `${count === 1 ? 'One gap' : `${count} gaps`} in the recording, the longest of ${tidy(longest)} s at ${tidy(longestAt)} s.`;
  return { id: 'gap', detail, row: rowOf(first), count, repaired: false };
}

function tidy(value: number): string {
  return String(Number(value.toPrecision(4)));
}
