// Whether everything asked for has come and is drawn. Pictures, prints and tests wait for it instead of for the clock.

import { frame } from './frame.ts';

let flying = 0;
const waiting = new Set<() => void>();

/** A question to the core that a pane waits for; call what it returns once, when the answer is there or given up. */
export function questionUnderWay(): () => void {
  flying++;
  let over = false;
  return () => {
    if (over) return;
    over = true;
    flying--;
    look();
  };
}

export function tracesSettled(): boolean {
  return flying === 0 && frame.idle;
}

/** Resolves when nothing is under way and everything is drawn; at once where that is so already. */
export function whenTracesSettled(): Promise<void> {
  if (tracesSettled()) return Promise.resolve();
  return new Promise((resolve) => {
    waiting.add(resolve);
    look();
  });
}

/** Told by every stack after it has drawn. */
export function look(): void {
  if (waiting.size === 0 || !tracesSettled()) return;
  for (const resolve of waiting) resolve();
  waiting.clear();
}
