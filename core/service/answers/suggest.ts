import { answered, notOpen } from '../serviceProblems.ts';
import type { Answer } from './answer.ts';

/** Windows of a capture that are worth scoring. */
export const suggest: Answer<'suggest'> = ({ key }, { held, core }) => {
  const capture = held.find(key);
  return capture === null ? notOpen() : answered(core.suggestWindows(capture.capture));
};
