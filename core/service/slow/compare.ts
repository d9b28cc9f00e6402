import { answered, notOpen } from '../serviceProblems.ts';
import type { SlowAnswer } from './slowAnswer.ts';

/** A window over another, of one capture or of two. */
export const compare: SlowAnswer<'compare'> = ({ first, second }, { find, core }) => {
  const one = find(first.key);
  const two = find(second.key);
  if (one === null || two === null) return notOpen();
  return answered(core.compareWindows({ capture: one, window: first.window }, { capture: two, window: second.window }));
};
