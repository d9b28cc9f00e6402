/**
 * Why something could not be done, in the three parts every refusal of the program has. The window shows them as
 * sentences; the headless command prints them on one line. None of them holds a path, a stack or a code without words.
 */
export interface Problem {
  /** Stable id for tests and for looking help up: "noNumbers". */
  readonly id: string;
  /** What happened, one sentence: "This file holds no numbers." */
  readonly what: string;
  /** Where: the file's name, and row, column or byte where that is known. */
  readonly where: string;
  /** What to do now, one sentence. */
  readonly doNext: string;
}

/** A result that may be refused. Expected failures are values; only broken promises inside the program are thrown. */
export type Outcome<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: Problem };

/** The parts as one line, for standard error and for logs. */
export function problemLine(problem: Problem): string {
  return `${problem.where}: ${problem.what} ${problem.doNext}`.replace(/\s+/g, ' ').trim();
}
