import { useSyncExternalStore } from 'react';

/** One value that changes too often to travel through the whole tree: only those who listen render again. */
export class Signal<T> {
  private now: T;
  private readonly hearers = new Set<() => void>();

  constructor(first: T) {
    this.now = first;
  }

  readonly get = (): T => this.now;

  set(next: T): void {
    if (Object.is(next, this.now)) return;
    this.now = next;
    for (const hear of this.hearers) hear();
  }

  readonly listen = (hear: () => void): (() => void) => {
    this.hearers.add(hear);
    return () => this.hearers.delete(hear);
  };
}

export function useSignal<T>(signal: Signal<T>): T {
  return useSyncExternalStore(signal.listen, signal.get);
}
