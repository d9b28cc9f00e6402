import type { Channel } from '../capture/channel.ts';
import { ROLE_FACTS } from '../capture/roles.ts';
import type { CaptureWarning } from '../capture/warnings.ts';
import type { AssignedRole } from './naming/assignRoles.ts';
import { strangeUnitIn } from './naming/strangeUnit.ts';
import { shownText } from './shownText.ts';

/** What is odd about one channel. */
export function channelWarnings(channel: Channel, guess: AssignedRole): CaptureWarning[] {
  const { facts, role } = channel;
  const name = shownText(channel.name, 60);
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
  const strange = channel.fileUnit === null && !guess.unitGuessed ? strangeUnitIn(channel.name) : null;
  if (strange !== null) {
    say(
      'unitGuessed',
      `“${name}”: “${shownText(strange, 24)}” is no unit that is known; the values were taken as ${guess.unit ?? ROLE_FACTS[role].unit}.`,
    );
  }
  if (channel.unit !== ROLE_FACTS[role].unit) {
    say(
      'other',
      `“${name}” is in ${channel.unit}, which is no unit of ${ROLE_FACTS[role].words.toLowerCase()}; its values stand as they are.`,
    );
  }
  const [least, most] = ROLE_FACTS[role].plausible;
  if (facts.finite > 0 && (facts.min < least || facts.max > most)) {
    say(
      'other',
      `“${name}” reaches from ${tidy(facts.min)} to ${tidy(facts.max)}, beyond what such a channel can carry; the values were kept.`,
    );
  }
  if (facts.finite === 0) say('other', `“${name}” holds no values.`);
  else if (facts.min === facts.max && facts.finite > 1 && mayChange(channel)) {
    say(
      'channelNeverChanges',
      `“${name}” never changes; it stays at ${tidy(facts.min)} ${channel.unit === '1' ? '' : channel.unit}`
        .trim()
        .concat('.'),
      facts.finite,
    );
  }
  return found;
}

/** A parked car's speed and a status that stays closed loop are as they should be. */
function mayChange({ role, facts }: Channel): boolean {
  return role !== 'fuelStatus' && !(role === 'speed' && facts.max === 0);
}

function place({ bank, sensor }: Channel): string {
  if (bank === null) return '';
  return sensor === null ? `, bank ${bank}` : `, bank ${bank} sensor ${sensor}`;
}

function tidy(value: number): string {
  return String(Number(value.toPrecision(4)));
}
