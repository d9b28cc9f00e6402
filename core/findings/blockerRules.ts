import { registry } from '../registry.ts';
import type { Share } from '../units/quantities.ts';

/** A reason why a finding may not be given: what it is called in a sentence, and the test that removes it. */
export interface BlockerRule {
  readonly id: string;
  /** The sentence before the condition's own numbers: "The engine is not warm." */
  readonly words: string;
  /** Id of the next test that removes it. */
  readonly removedBy: string;
  /** How often what it names, once mended, turns a finding round that was given in spite of it; common practice, no source. */
  readonly chance: Share;
}

function rule(id: string, words: string, removedBy: string, chance: Share): BlockerRule {
  return { id, words, removedBy, chance };
}

/**
 * Every blocker, in the order in which they are worked off: what was not recorded, codes, engine, sensors, exhaust, then
 * the test itself.
 */
export const BLOCKER_RULES: readonly BlockerRule[] = registry('blocker', (one) => one.id, [
  rule('noRearSensor', 'There is no rear sensor in this capture.', 'recordRear', 0.9),
  rule('noFrontSensor', 'There is no front sensor in this capture.', 'recordFront', 0.9),
  rule('misfire', 'A misfire is on record.', 'misfireRepair', 0.6),
  rule('mixtureCode', 'A mixture code is on record.', 'trimsCheck', 0.5),
  rule('frontCode', 'The front sensor has a code of its own.', 'frontSensorCheck', 0.5),
  rule('rearCode', 'The rear sensor has a code of its own.', 'rearSensorCheck', 0.5),
  rule('readinessOpen', 'A readiness question is open.', 'monitorsRun', 0.3),
  rule('coldEngine', 'The engine is not warm.', 'warmUp', 0.7),
  rule('coldConverter', 'The converter may not be hot.', 'warmUp', 0.7),
  rule('openLoop', 'The fuel control is not in closed loop.', 'closedLoopHold', 0.5),
  rule('sensorsExchanged', 'Front and rear sensor seem to be exchanged.', 'exchangeCheck', 0.7),
  rule('frontNotSwitching', 'The front sensor does not switch.', 'frontSensorCheck', 0.6),
  rule('frontWeak', 'The front sensor does not reach both ends.', 'frontSensorCheck', 0.5),
  rule('frontLazy', 'The front sensor is lazy.', 'frontSensorCheck', 0.6),
  rule(
    'frontDisturbed',
    'Oxygen reaches the front sensor in bursts: a misfire, or a leak ahead of it, comes first.',
    'misfireCheck',
    0.5,
  ),
  rule('rearNotProven', 'The rear sensor is not proven alive.', 'fuelCutCoast', 0.3),
  rule('leak', 'There are signs of a leak.', 'leakCheck', 0.5),
  rule(
    'richBehind',
    'The rear sensor rests rich: a misfire, a leak ahead of the front sensor or a rich mixture comes first.',
    'misfireCheck',
    0.5,
  ),
  rule('mixtureOff', 'The mixture does not swing about lambda 1.', 'trimsCheck', 0.5),
  rule('trimsOut', 'The fuel trims are far out.', 'trimsCheck', 0.5),
  rule('idleOnly', 'This was not at a raised speed.', 'hold', 0.5),
  rule('unsteadySpeed', 'The engine speed was not steady.', 'hold', 0.4),
  rule('windowShort', 'The window is too short.', 'holdLonger', 0.3),
  rule('tooFewValues', 'The instrument brought too few values.', 'fasterInstrument', 0.4),
  rule('noWindow', 'No window is a steady stretch at a raised speed.', 'hold', 0.6),
  rule('temperatureAlone', 'Surface temperatures alone do not settle it.', 'gasBeforeAfter', 0.4),
]);

const BY_ID = new Map(BLOCKER_RULES.map((one) => [one.id, one]));

/** The rule of a blocker; an id that is not in the list is a mistake in the program. */
export function blockerRule(id: string): BlockerRule {
  const found = BY_ID.get(id);
  if (!found) throw new Error(`No blocker is called "${id}".`);
  return found;
}
