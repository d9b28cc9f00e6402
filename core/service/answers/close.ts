import { answered } from '../serviceProblems.ts';
import type { Answer } from './answer.ts';

/** Lets a capture go, with all that was prepared for drawing it. Closing twice is no fault. */
export const close: Answer<'close'> = ({ key }, { held }) => {
  held.release(key);
  return answered(null);
};
