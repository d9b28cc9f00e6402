import { answered, notOpen } from '../serviceProblems.ts';
import type { Answer } from './answer.ts';

/** What the fitted model would have the rear sensor show in a window. */
export const modelTraces: Answer<'modelTraces'> = ({ key, window }, { held, core }) => {
  const capture = held.find(key);
  return capture === null ? notOpen() : answered(core.modelTraces(capture.capture, window));
};
