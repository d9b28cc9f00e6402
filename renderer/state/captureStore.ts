import { createStore, type StoreApi } from 'zustand/vanilla';
import type { CaptureOutline, CaptureSummary } from '../../core/bridge/coreMessages.ts';
import type { ColumnQuestion, ReadProgress } from '../../core/reading/readCapture.ts';
import type { ColumnChoice } from '../../core/record/schema.ts';
import type { CaptureWindow } from '../../core/windows/window.ts';
import type { TraceSource } from '../plot/traceStackProps.ts';

/** A file that is being read. */
export interface OpeningJob {
  readonly id: string;
  readonly name: string;
  readonly bytes: number;
  /** By the program's clock. */
  readonly startedAt: number;
  readonly progress: ReadProgress | null;
  /** Set for a bundle, of which every file is compared with its hash, and nothing is told meanwhile. */
  readonly checking?: true;
  /** The vehicle it is read for: called off when that is left. Without one it goes on, whatever is closed or opened. */
  readonly vehicleId?: string;
  cancel(): void;
}

/** The first rows of a file that is still being read, to look at meanwhile. */
export interface Beginning {
  readonly outline: CaptureOutline;
  /** The same object as long as it is shown. */
  readonly source: TraceSource;
}

/** A capture of the record that the core's process holds at this moment. */
export interface HeldCapture {
  readonly captureId: string;
  /** The shell's token for its file, to read it again. */
  readonly token: string;
  readonly summary: CaptureSummary;
  /** The same object as long as the capture is held. */
  readonly source: TraceSource;
  readonly offers: readonly CaptureWindow[];
  /** What is not certain about its columns, while the person has not looked. */
  readonly question: ColumnQuestion | null;
  readonly choice: ColumnChoice | null;
}

/** A capture of the record whose file was not found, or is no longer the same. */
export interface MissingCapture {
  readonly captureId: string;
  readonly why: 'notFound' | 'changed' | 'unread';
}

export interface CaptureState {
  readonly jobs: readonly OpeningJob[];
  readonly beginning: Beginning | null;
  readonly held: Readonly<Record<string, HeldCapture>>;
  readonly missing: Readonly<Record<string, MissingCapture>>;
  addJob(job: OpeningJob): void;
  progress(jobId: string, progress: ReadProgress): void;
  endJob(jobId: string): void;
  begin(beginning: Beginning): void;
  /** Lets a beginning go; another that is shown by now stays. */
  endBeginning(key: string): void;
  hold(capture: HeldCapture): void;
  offers(captureId: string, offers: readonly CaptureWindow[]): void;
  answered(captureId: string): void;
  miss(capture: MissingCapture): void;
  release(captureId: string): void;
  releaseAll(): void;
}

export type CaptureStore = StoreApi<CaptureState>;

export function createCaptureStore(): CaptureStore {
  return createStore<CaptureState>()((set, get) => {
    const change = (captureId: string, part: Partial<HeldCapture>): void => {
      const held = get().held[captureId];
      if (held !== undefined) set({ held: { ...get().held, [captureId]: { ...held, ...part } } });
    };
    return {
      jobs: [],
      beginning: null,
      held: {},
      missing: {},
      addJob: (job) => set({ jobs: [...get().jobs, job] }),
      progress: (jobId, progress) =>
        set({
          jobs: get().jobs.map((job) => (job.id === jobId && !goesBack(job, progress) ? { ...job, progress } : job)),
        }),
      endJob: (jobId) => set({ jobs: get().jobs.filter((job) => job.id !== jobId) }),
      begin: (beginning) => set({ beginning }),
      endBeginning: (key) => get().beginning?.outline.key === key && set({ beginning: null }),
      hold: (capture) =>
        set({
          held: { ...get().held, [capture.captureId]: capture },
          missing: without(get().missing, capture.captureId),
        }),
      offers: (captureId, offers) => change(captureId, { offers }),
      answered: (captureId) => change(captureId, { question: null }),
      miss: (capture) => set({ missing: { ...get().missing, [capture.captureId]: capture } }),
      release: (captureId) => set({ held: without(get().held, captureId), missing: without(get().missing, captureId) }),
      releaseAll: () => set({ held: {}, missing: {} }),
    };
  });
}

/** A bar never moves backwards. */
function goesBack(job: OpeningJob, progress: ReadProgress): boolean {
  return job.progress !== null && progress.bytesRead < job.progress.bytesRead;
}

function without<T>(entries: Readonly<Record<string, T>>, id: string): Readonly<Record<string, T>> {
  const { [id]: _gone, ...rest } = entries;
  return rest;
}
