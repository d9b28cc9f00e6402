import type { Clock } from '../../renderer/program/clock.ts';

/** A clock that stands still until it is told to go on. */
export interface FakeClock extends Clock {
  /** Lets time pass and does, in order, everything that falls due. */
  pass(milliseconds: number): void;
}

export function fakeClock(): FakeClock {
  let nowMs = 0;
  const waiting = new Map<number, { readonly atMs: number; readonly deed: () => void }>();
  let nextId = 1;
  return {
    now: () => nowMs,
    instant: () => new Date(Date.UTC(2026, 0, 1) + nowMs).toISOString().replace('.000Z', 'Z'),
    after: (milliseconds, deed) => {
      const id = nextId++;
      waiting.set(id, { atMs: nowMs + milliseconds, deed });
      return () => void waiting.delete(id);
    },
    pass: (milliseconds) => {
      const untilMs = nowMs + milliseconds;
      for (;;) {
        const due = [...waiting].filter(([, { atMs }]) => atMs <= untilMs).sort(([, a], [, b]) => a.atMs - b.atMs)[0];
        if (due === undefined) break;
        const [id, { atMs, deed }] = due;
        waiting.delete(id);
        nowMs = atMs;
        deed();
      }
      nowMs = untilMs;
    },
  };
}
