import type { Channel } from '../capture/channel.ts';
import { gapOf } from '../capture/gap.ts';
import { ROLE_FACTS } from '../capture/roles.ts';
import { sampleCount, type TimeBase, timeAt } from '../capture/timeBase.ts';
import type { CaptureWarning } from '../capture/warnings.ts';
import type { AssignedRole } from './naming/assignRoles.ts';

/** What is odd about one channel. */
export function channelWarnings(channel: Channel, guess: AssignedRole): CaptureWarning[] {
  const { facts, role, name } = channel;
  const found: CaptureWarning[] = [];
  const say = (id: CaptureWarning['id'], detail: string, count = 1): void => {
    found.push({ id, detail, row: null, count, repaired: false });
  };
  if (guess.questioned !== null) say('roleQuestioned', `“${name}”: ${guess.questioned}. It is not used for scoring.`);
  else if (role !== 'other' && !guess.certain) {
    say(
      'roleGuessed',
      `“${name}” was taken for ${ROLE_FACTS[role].words.toLowerCase()}${place(channel)}: ${guess.because}.`,
    );
  }
  if (guess.unitGuessed && role !== 'other') {
    say(
      'unitGuessed',
      `“${name}” has no unit that is known; its values were taken as ${guess.unit ?? ROLE_FACTS[role].unit}.`,
    );
  }
  if (role === 'other') return found;
  const [least, most] = ROLE_FACTS[role].plausible;
  if (facts.finite > 0 && (facts.min < least || facts.max > most)) {
    say(
      'other',
      `“${name}” reaches from ${tidy(facts.min)} to ${tidy(facts.max)}, beyond what such a channel can carry; the values were kept.`,
    );
  }
  if (facts.finite === 0) say('other', `“${name}” holds no values.`);
  else if (facts.resolution === 0 && facts.finite > 1 && role !== 'fuelStatus') {
    say(
      'channelNeverChanges',
      `“${name}” never changes; it stays at ${tidy(facts.min)} ${channel.unit === '1' ? '' : channel.unit}`
        .trim()
        .concat('.'),
      facts.finite,
    );
  }
  if (role !== 'fuelStatus' && facts.renewalRateHz > 0 && facts.renewalRateHz < facts.medianRateHz * 0.75) {
    say(
      'heldValues',
      `“${name}” is written at ${tidy(facts.medianRateHz)} Hz but renewed at only about ${tidy(facts.renewalRateHz)} Hz; the rows between repeat the last value.`,
      facts.finite,
    );
  }
  return found;
}

function place({ bank, sensor }: Channel): string {
  if (bank === null) return '';
  return sensor === null ? `, bank ${bank}` : `, bank ${bank} sensor ${sensor}`;
}

/** Gaps, once for each time base. */
export function timeWarnings(channels: readonly Channel[], rowOf: (index: number) => number | null): CaptureWarning[] {
  const seen = new Set<TimeBase>();
  const found: CaptureWarning[] = [];
  for (const { time, facts } of channels) {
    if (seen.has(time) || time.kind === 'regular' || facts.medianRateHz === 0) continue;
    seen.add(time);
    const warning = gaps(time, gapOf(facts), rowOf);
    if (warning !== null && !found.some(({ detail }) => detail === warning.detail)) found.push(warning);
  }
  return found.slice(0, 4);
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
  return {
    id: 'gap',
    detail: `${count === 1 ? 'One gap' : `${count} gaps`} in the recording, the longest of ${tidy(longest)} s at ${tidy(longestAt)} s.`,
    row: rowOf(first),
    count,
    repaired: false,
  };
}

function tidy(value: number): string {
  return String(Number(value.toPrecision(4)));
}
