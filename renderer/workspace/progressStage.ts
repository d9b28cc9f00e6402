import { withUnit } from '../words/numbers.ts';
import { durationWords } from '../words/times.ts';

/** How much is shown of a file that is being read: more the longer it takes. */
export type ProgressStage = 'nothing' | 'sign' | 'bar' | 'barWithTime';

export const BAR_FROM_MS = 2000;

/** Nothing under a second, a sign from one, a bar with amount and cancel from two, the time left from ten. */
export function progressStage(elapsedMs: number): ProgressStage {
  if (elapsedMs < 1000) return 'nothing';
  if (elapsedMs < BAR_FROM_MS) return 'sign';
  return elapsedMs < 10_000 ? 'bar' : 'barWithTime';
}

/** "about 20 s left", rounded so that it does not flicker; null while nothing can be said. */
export function timeLeftWords(elapsedMs: number, share: number): string | null {
  if (!(share > 0.01)) return null;
  const leftS = (elapsedMs / 1000) * (1 / share - 1);
  const step = leftS < 60 ? 5 : leftS < 600 ? 30 : 300;
  const roundedS = Math.max(step, Math.ceil(leftS / step) * step);
  return `about ${roundedS < 60 ? withUnit(roundedS, 's', 0) : durationWords(roundedS)} left`;
}
