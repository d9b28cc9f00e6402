import { answered, notOpen } from '../serviceProblems.ts';
import type { SlowAnswer } from './slowAnswer.ts';

/** What the fitted model would have the rear sensor show in a window. */
export const modelTraces: SlowAnswer<'modelTraces'> = ({ key, window }, { find, core }) => {
  const capture = find(key);
  return capture === null ? notOpen() : answered(core.modelTraces(capture, window));
};
