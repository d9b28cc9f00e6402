import { answered, notOpen } from '../serviceProblems.ts';
import type { SlowAnswer } from './slowAnswer.ts';

/** Everything the core says about one window, for its bank. */
export const scoreWindow: SlowAnswer<'scoreWindow'> = ({ key, window, troubleCodes }, { find, core }) => {
  const capture = find(key);
  return capture === null ? notOpen() : answered(core.scoreWindow(capture, window, troubleCodes));
};
