import { Worker } from 'node:worker_threads';
import type { Outcome, Problem } from '../../core/reading/problem.ts';
import type { BundleJob } from './bundleJob.ts';
import type { KeepWish } from './keepCaptures.ts';
import type { CheckedBundle } from './openBundle.ts';
import type { PackedBundle, PackWish } from './packBundle.ts';
import type { PlacedCapture, WeighedCapture } from './weighCaptures.ts';

/** What is told of a bundle that is as it was made. */
export type ToldBundle = Omit<CheckedBundle, 'captures' | 'sheet'>;

/** Does the work on bundles, each job in a thread of its own. A thread that dies or is called off refuses its job. */
export class BundleWorker {
  readonly #script: string;
  readonly #running = new Set<() => void>();

  /** `script` is the bundle of bundleThread.ts. */
  constructor(script: string) {
    this.#script = script;
  }

  weigh(captures: readonly PlacedCapture[]): Promise<Outcome<readonly WeighedCapture[]>> {
    return this.#run<readonly WeighedCapture[]>({ kind: 'weigh', captures });
  }

  pack(wish: PackWish): Promise<Outcome<PackedBundle>> {
    return this.#outcome<PackedBundle>({ kind: 'pack', wish });
  }

  open(path: string, name: string): Promise<Outcome<ToldBundle>> {
    return this.#outcome<ToldBundle>({ kind: 'open', path, name });
  }

  keep(wish: KeepWish): Promise<Outcome<null>> {
    return this.#outcome<null>({ kind: 'keep', wish });
  }

  /** Calls off everything that is under way. */
  cancel(): void {
    for (const callOff of [...this.#running]) callOff();
  }

  /** For jobs that may refuse by themselves. */
  async #outcome<T>(job: BundleJob): Promise<Outcome<T>> {
    const answer = await this.#run<Outcome<T>>(job);
    return answer.ok ? answer.value : answer;
  }

  #run<T>(job: BundleJob): Promise<Outcome<T>> {
    const thread = new Worker(this.#script, { workerData: job });
    return new Promise((resolve) => {
      const end = (outcome: Outcome<T>): void => {
        this.#running.delete(callOff);
        void thread.terminate();
        resolve(outcome);
      };
      const callOff = (): void => end({ ok: false, problem: cancelled() });
      this.#running.add(callOff);
      thread.on('message', (value: T) => end({ ok: true, value }));
      thread.on('error', () => end({ ok: false, problem: stopped() }));
      thread.on('exit', () => end({ ok: false, problem: stopped() }));
    });
  }
}

const cancelled = (): Problem => ({
  id: 'cancelled',
  what: 'The work on the bundle was cancelled.',
  where: 'the bundle',
  doNext: 'Begin again when you like: nothing was written.',
});

const stopped = (): Problem => ({
  id: 'bundle.stopped',
  what: 'The work on the bundle stopped before it was done.',
  where: 'the bundle',
  doNext: 'Close captures and other programs that need much memory, and try again.',
});
