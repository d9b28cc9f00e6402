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
  const what = error instanceof Error ? error.message : String(error);
  return `${what}\n  where: the set-up of Tailtrace\n  what to do: run the command again with TAILTRACE_TRACE=1 to see the place in the program`;
}
