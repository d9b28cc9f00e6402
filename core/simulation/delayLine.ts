/**
 * A delay whose length may change from step to step, as gas in a pipe: what is put in comes out `delay` steps later.
 * Delays are cut to 0 .. capacity - 1 steps.
 */
export interface DelayLine {
  step(value: number, delaySteps: number): number;
}

/** A delay of up to `capacity` - 1 steps; before anything was put in it gives `first`. */
export function createDelayLine(capacity: number, first: number): DelayLine {
  const ring = new Float64Array(capacity).fill(first);
  let head = 0;
  return {
    step(value, delaySteps) {
      head = head + 1 === capacity ? 0 : head + 1;
      ring[head] = value;
      const back = Math.max(0, Math.min(capacity - 1, Math.round(delaySteps)));
      const at = head - back;
      return ring[at < 0 ? at + capacity : at] ?? first;
    },
  };
}
