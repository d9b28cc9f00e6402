import { registry } from '../registry.ts';

/** A reason why a finding may not be given: what it is called in a sentence, and the test that removes it. */
export interface BlockerRule {
  readonly id: string;
  /** The sentence before the condition's own numbers: "The engine is not warm." */
  readonly words: string;
  /** Id of the next test that removes it. */
  readonly removedBy: string;
}

function rule(id: string, words: string, removedBy: string): BlockerRule {
  return { id, words, removedBy };
}

/** Every blocker, in the order in which they are worked off: codes, engine, sensors, exhaust, then the test itself. */
export const BLOCKER_RULES: readonly BlockerRule[] = registry('blocker', (one) => one.id, [
  rule('misfire', 'A misfire is on record.', 'misfireRepair'),
  rule('mixtureCode', 'A mixture code is on record.', 'trimsCheck'),
  rule('frontCode', 'The front sensor has a code of its own.', 'frontSensorCheck'),
  rule('rearCode', 'The rear sensor has a code of its own.', 'rearSensorCheck'),
  rule('coldEngine', 'The engine is not warm.', 'warmUp'),
  rule('coldConverter', 'The converter may not be hot.', 'warmUp'),
  rule('openLoop', 'The fuel control is not in closed loop.', 'closedLoopHold'),
  rule('sensorsExchanged', 'Front and rear sensor seem to be exchanged.', 'exchangeCheck'),
  rule('frontNotSwitching', 'The front sensor does not switch.', 'frontSensorCheck'),
  rule('frontWeak', 'The front sensor does not reach both ends.', 'frontSensorCheck'),
  rule('frontLazy', 'The front sensor is lazy.', 'frontSensorCheck'),
  rule('rearNotProven', 'The rear sensor is not proven alive.', 'fuelCutCoast'),
  rule('leak', 'There are signs of a leak.', 'leakCheck'),
  rule(
    'richBehind',
    'The rear sensor rests rich: a misfire, a leak ahead of the front sensor or a rich mixture comes first.',
    'misfireCheck',
  ),
  rule('mixtureOff', 'The mixture does not swing about lambda 1.', 'trimsCheck'),
  rule('trimsOut', 'The fuel trims are far out.', 'trimsCheck'),
  rule('idleOnly', 'This was not at a raised speed.', 'hold'),
  rule('unsteadySpeed', 'The engine speed was not steady.', 'hold'),
  rule('windowShort', 'The window is too short.', 'holdLonger'),
  rule('tooFewValues', 'The instrument brought too few values.', 'fasterInstrument'),
  rule('noRearSensor', 'There is no rear sensor in this capture.', 'recordRear'),
  rule('noFrontSensor', 'There is no front sensor in this capture.', 'recordFront'),
  rule('noWindow', 'No steady stretch at a raised speed was found.', 'hold'),
  rule('temperatureAlone', 'Surface temperatures alone do not settle it.', 'gasBeforeAfter'),
]);

const BY_ID = new Map(BLOCKER_RULES.map((one) => [one.id, one]));

/** The rule of a blocker; an id that is not in the list is a mistake in the program. */
export function blockerRule(id: string): BlockerRule {
  const found = BY_ID.get(id);
  if (!found) throw new Error(`No blocker is called "${id}".`);
  return found;
}
