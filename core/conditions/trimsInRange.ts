import { round } from '../words/numbers.ts';
import type { Condition } from './condition.ts';
import { met, notMet, notRecorded } from './conditionResult.ts';
import { trimsOf } from './trimsOf.ts';

/** Sum of both trims; ±10 to ±12 % is usual, ±5 % strict, ±15 % lenient (common practice, no source). */
const MOST_SUM = 12;

export const trimsInRange: Condition = {
  id: 'trimsInRange',
  words: 'Fuel trims within range',
  help: 'Large trims mean that the mixture, not the converter, is the first thing to look at: a leak, a fuel pressure fault, a wrong air-flow reading.',
  blocker: 'trimsOut',
  kinds: ['hold', 'cruise', 'idle', 'mixed'],
  judge({ capture, bank, window }) {
    const { short, long } = trimsOf(capture, bank, window);
    if (short === null && long === null) return notRecorded(this.id, 'Fuel trims were not recorded.');
    const parts = [
      ...(short === null ? [] : [`short-term ${signed(short)}`]),
      ...(long === null ? [] : [`long-term ${signed(long)}`]),
    ];
    const sum = (short ?? 0) + (long ?? 0);
    const detail = `Trims ${parts.join(', ')}${parts.length > 1 ? `, together ${signed(sum)}` : ''}.`;
    return Math.abs(sum) > MOST_SUM ? notMet(this.id, `${detail} Beyond ±${MOST_SUM} %.`) : met(this.id, detail);
  },
};

function signed(value: number): string {
  return `${value > 0 ? '+' : ''}${round(value, 1)} %`;
}
