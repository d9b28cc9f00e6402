import { answered, notOpen } from '../serviceProblems.ts';
import type { SlowAnswer } from './slowAnswer.ts';

/** Windows of a capture that are worth scoring. */
export const suggest: SlowAnswer<'suggest'> = ({ key }, { find, core }) => {
  const capture = find(key);
  return capture === null ? notOpen() : answered(core.suggestWindows(capture));
};
