import { answered, notOpen } from '../serviceProblems.ts';
import type { Answer } from './answer.ts';

/** A window over another, of one capture or of two. */
export const compare: Answer<'compare'> = ({ first, second }, { held, core }) => {
  const one = held.find(first.key);
  const two = held.find(second.key);
  if (one === null || two === null) return notOpen();
  return answered(
    core.compareWindows(
      { capture: one.capture, window: first.window },
      { capture: two.capture, window: second.window },
    ),
  );
};
