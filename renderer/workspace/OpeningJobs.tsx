import { Loader, X } from 'lucide-react';
import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import { lowerFirst } from '../../core/words/numbers.ts';
import { useProgram } from '../program/programContext.ts';
import type { OpeningJob } from '../state/captureStore.ts';
import { Button } from '../widgets/Button.tsx';
import { bytesWords, countWords } from '../words/numbers.ts';
import { BAR_FROM_MS, progressStage, timeLeftWords } from './progressStage.ts';

const LOOK_EVERY_MS = 250;

/** Files that are being read: a sign, then a bar with amount, time left and cancel. */
export function OpeningJobs() {
  const program = useProgram();
  const jobs = useStore(program.captures, (captures) => captures.jobs);
  if (jobs.length === 0) return null;
  return (
    <section aria-label="Files being read" className="openingJobs">
      {jobs.map((job) => (
        <Job key={job.id} job={job} />
      ))}
    </section>
  );
}

function Job({ job }: { readonly job: OpeningJob }) {
  const elapsedMs = useElapsed(job.startedAt);
  const beginning = useStore(useProgram().captures, (captures) => captures.beginning !== null);
  // The bar stands over the first rows from the moment they are shown, so that they do not move.
  const stage = beginning ? progressStage(Math.max(elapsedMs, BAR_FROM_MS)) : progressStage(elapsedMs);
  if (stage === 'nothing') return null;
  if (stage === 'sign') {
    return (
      <p className="readingSign">
        <Loader size={18} strokeWidth={1.6} aria-hidden="true" /> {doing(job)}
      </p>
    );
  }
  return <Bar job={job} timeLeft={stage === 'barWithTime'} elapsedMs={elapsedMs} />;
}

/** Milliseconds since a moment, by the program's clock; looked at four times a second. */
function useElapsed(sinceMs: number): number {
  const { clock } = useProgram();
  const [elapsedMs, setElapsedMs] = useState(0);
  useEffect(() => {
    let callOff = (): void => undefined;
    const look = (): void => {
      setElapsedMs(clock.now() - sinceMs);
      callOff = clock.after(LOOK_EVERY_MS, look);
    };
    look();
    return () => callOff();
  }, [clock, sinceMs]);
  return elapsedMs;
}

interface BarProps {
  readonly job: OpeningJob;
  readonly timeLeft: boolean;
  readonly elapsedMs: number;
}

function Bar({ job, timeLeft, elapsedMs }: BarProps) {
  const read = job.progress?.bytesRead ?? 0;
  const total = job.progress?.bytesTotal ?? job.bytes;
  const share = total > 0 ? Math.min(1, read / total) : 0;
  const amount = `${bytesWords(read)} of ${bytesWords(total)}, ${countWords(job.progress?.rows ?? 0, 'row')}`;
  const left = timeLeft ? timeLeftWords(elapsedMs, share) : null;
  const words = job.checking ? bytesWords(total) : left === null ? amount : `${amount}, ${left}`;
  const known = job.checking ? {} : { 'aria-valuenow': Math.floor(share * 100), 'aria-valuetext': words };
  return (
    <div className="progress">
      <div>
        <p>{doing(job)}</p>
        <p className="soft">{words}</p>
      </div>
      <Button icon={X} look="outline" label={`Cancel ${lowerFirst(doing(job))}`} onPress={job.cancel}>
        Cancel
      </Button>
      <div
        className="progressBar"
        role="progressbar"
        aria-label={doing(job)}
        aria-valuemin={0}
        aria-valuemax={100}
        {...known}
      >
        <div style={{ width: `${share * 100}%` }} />
      </div>
    </div>
  );
}

function doing({ checking, name }: OpeningJob): string {
  return `${checking ? 'Checking every file in' : 'Reading'} ${name}`;
}
