import type { Outcome, Problem } from '../../core/reading/problem.ts';
import type { BundleJob } from './bundleJob.ts';
import type { KeepWish } from './keepCaptures.ts';
import type { CheckedBundle } from './openBundle.ts';
import type { PackedBundle, PackWish } from './packBundle.ts';
import type { PlacedCapture, WeighedCapture } from './weighCaptures.ts';

/** What is told of a bundle that is as it was made. */
export type ToldBundle = Omit<CheckedBundle, 'captures' | 'sheet'>;

/** What is heard of a job that is done elsewhere. */
export interface JobHeard {
  told(answer: unknown): void;
  /** Nothing more will come. */
  ended(): void;
}

/** Starts a job apart from the shell, and gives what ends it, whether it is done or not. */
export type StartJob = (job: BundleJob, heard: JobHeard) => () => void;

/** Has the work on bundles done elsewhere, each job by itself. One that dies or is called off is refused. */
export class BundleWorker {
  readonly #start: StartJob;
  readonly #running = new Set<() => void>();

  constructor(start: StartJob) {
    this.#start = start;
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
    return new Promise((resolve) => {
      const end = (outcome: Outcome<T>): void => {
        if (!this.#running.delete(callOff)) return;
        resolve(outcome);
        over();
      };
      const callOff = (): void => end({ ok: false, problem: cancelled() });
      this.#running.add(callOff);
      const over = this.#start(job, {
        told: (answer: T) => end({ ok: true, value: answer }),
        ended: () => end({ ok: false, problem: stopped() }),
      });
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
