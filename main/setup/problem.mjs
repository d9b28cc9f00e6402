// Failures that a person can mend, and the one place where a command of the set-up ends with words instead of a trace.

/** Something that stops a command: what happened, where, and what to do about it. */
export class SetupProblem extends Error {
  /**
   * @param {{ what: string, where: string, doNext: string }} facts
   */
  constructor(facts) {
    super(facts.what);
    this.name = 'SetupProblem';
    this.facts = facts;
  }
}

/**
 * Runs a command to its end. A SetupProblem becomes three short lines and exit status 1; so does anything unforeseen,
 * whose trace is shown only with TAILTRACE_TRACE=1.
 * @param {() => Promise<number | void>} command
 */
export async function runCommand(command) {
  try {
    process.exitCode = (await command()) ?? 0;
  } catch (error) {
    process.stderr.write(`${inWords(error)}\n`);
    if (process.env.TAILTRACE_TRACE === '1' && error instanceof Error) process.stderr.write(`${error.stack}\n`);
    process.exitCode = 1;
  }
}

/** @param {unknown} error */
function inWords(error) {
  if (error instanceof SetupProblem) {
    const { what, where, doNext } = error.facts;
    return `${what}\n  where: ${where}\n  what to do: ${doNext}`;
  }
  const refused = refusedBySystem(error);
  if (refused !== null) return refused;
  const what = error instanceof Error ? error.message : String(error);
  return `${what}\n  where: the set-up of Tailtrace\n  what to do: run the command again with TAILTRACE_TRACE=1 to see the place in the program`;
}

/** What the system may refuse on the way, and what a person can do about it. */
const REFUSALS = {
  EACCES: ['may not be written', 'see who owns it; a run as root leaves folders that only root may write'],
  EPERM: ['may not be written', 'see who owns it; a run as root leaves folders that only root may write'],
  EROFS: ['lies on a disk that can only be read', 'copy the clone to another disk'],
  ENOSPC: ['does not fit on the disk', 'make room on it; the set-up needs 2 GB'],
  EDQUOT: ['does not fit into your share of the disk', 'make room; the set-up needs 2 GB'],
};

/**
 * The words for a file or folder that the system did not let us write; null for any other fault.
 * @param {unknown} error
 */
function refusedBySystem(error) {
  if (!(error instanceof Error) || !('code' in error)) return null;
  const place = 'path' in error && typeof error.path === 'string' ? error.path : 'the set-up of Tailtrace';
  const known = Object.entries(REFUSALS).find(([code]) => code === error.code)?.[1];
  if (known === undefined) return null;
  return `What the set-up has to write ${known[0]} (${error.code}).\n  where: ${place}\n  what to do: ${known[1]}, then run the command again`;
}
