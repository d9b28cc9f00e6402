import type { Problem } from '../../core/reading/problem.ts';
import type { Program } from './program.ts';

/** Tells of what failed and nobody waited for: a refusal of the shell must not pass in silence. */
export function hearFaults({ notices }: Pick<Program, 'notices'>, page: Pick<Window, 'addEventListener'>): void {
  page.addEventListener('unhandledrejection', () => notices.getState().tell('vehicle', FAULT));
}

const FAULT: Problem = {
  id: 'fault',
  what: 'Something that was asked for could not be done, through a fault of the program.',
  where: 'Tailtrace',
  doNext: 'Your work is kept. Try it once more; where it fails again, close the program and start it anew.',
};
