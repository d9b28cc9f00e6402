/** Something that happens now and then, and can be waited for. */
export class Signal {
  #waiting: (() => void)[] = [];

  /** Resolves when it is given next. */
  next(): Promise<void> {
    return new Promise((resolve) => this.#waiting.push(resolve));
  }

  give(): void {
    const waiting = this.#waiting;
    this.#waiting = [];
    for (const go of waiting) go();
  }
}
