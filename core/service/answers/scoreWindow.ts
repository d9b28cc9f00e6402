import { answered, notOpen } from '../serviceProblems.ts';
import type { Answer } from './answer.ts';

/** Everything the core says about one window, for its bank. */
export const scoreWindow: Answer<'scoreWindow'> = ({ key, window, troubleCodes }, { held, core }) => {
  const capture = held.find(key);
  return capture === null ? notOpen() : answered(core.scoreWindow(capture.capture, window, troubleCodes));
};
