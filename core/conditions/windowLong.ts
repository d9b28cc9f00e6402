import { frontVoltage } from '../measures/sensors.ts';
import { switchesOf, whyNotCountable } from '../measures/switching.ts';
import { round } from '../words/numbers.ts';
import type { Condition } from './condition.ts';
import { met, notMet } from './conditionResult.ts';

/** 30 to 60 s are usual, 10 s common with fast recorders; statistics want 20 cycles (common practice, no source). */
const LEAST_S = 10;
const LEAST_CYCLES = 10;

export const windowLong: Condition = {
  id: 'windowLong',
  words: 'Window long enough',
  help: 'Length counts in cycles of the front sensor, not only in seconds: ten at least, twenty for a good interval.',
  blocker: 'windowShort',
  kinds: ['hold', 'cruise', 'idle', 'mixed'],
  judge(context) {
    const { window } = context;
    const length = window.endS - window.startS;
    const seconds = `${round(length, 0)} s`;
    if (length < LEAST_S) return notMet(this.id, `${seconds}; at least ${LEAST_S} s are wanted.`);
    const front = frontVoltage(context).sensor;
    if (!front || whyNotCountable(front, context))
      return met(this.id, `${seconds}; front cycles could not be counted.`);
    const cycles = Math.floor(switchesOf(front).length / 2);
    const detail = `${seconds} with ${cycles} front cycles`;
    // A front sensor that hardly switches is its own blocker; a longer window would not help it.
    if (cycles < LEAST_CYCLES && length < 40) return notMet(this.id, `${detail}; at least ${LEAST_CYCLES} are wanted.`);
    return met(this.id, `${detail}.`);
  },
};
