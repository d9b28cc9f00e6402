import { whenTracesSettled } from '../plot/settled.ts';
import type { Program } from './program.ts';

/**
 * Marks the page as settled while nothing is under way: the first document is open, no file is being read, everything
 * is scored, saved and drawn. Tells the shell the first time, for a snapshot.
 */
export function watchSettled(program: Program, page: Document, started: Promise<void>): void {
  const { captures, score, record, shell } = program;
  let open = false;
  let told = false;
  let round = 0;

  const quiet = (): boolean => {
    const { pending, offer } = score.getState();
    const looking = offer !== null && offer.scores === null;
    return (
      open && captures.getState().jobs.length === 0 && !pending && !looking && record.getState().save !== 'pending'
    );
  };
  const look = (): void => {
    const mine = ++round;
    delete page.documentElement.dataset.settled;
    if (!quiet()) return;
    // One frame lays out what has changed and makes the panes ask; then their answers have to come and be drawn.
    requestAnimationFrame(() => {
      void whenTracesSettled().then(() => {
        if (mine !== round) return;
        page.documentElement.dataset.settled = 'true';
        if (told) return;
        told = true;
        // What was drawn in a frame is on the screen when the frame after it begins.
        requestAnimationFrame(() => requestAnimationFrame(() => void shell.settled(null)));
      });
    });
  };
  for (const store of [captures, score, record]) store.subscribe(look);
  void started.then(() => {
    open = true;
    look();
  });
}
