// npm run score: judges captures without a window, in plain Node. This file only meets the process: its words, its
// streams, its clock, and what must never happen.

import { readCapture } from '../../core/reading/readCapture.ts';
import { scoreCapture } from '../../core/scoreCapture.ts';
import { captureMemory } from '../captures/freeMemory.ts';
import { EXIT_STATUS } from './exitStatus.ts';
import { localInstant } from './localInstant.ts';
import { runScore } from './runScore.ts';
import { writeSheet } from './writeSheet.ts';

// Whoever reads the output may stop early ("| head"): that is no fault of the command.
process.stdout.on('error', (fault: NodeJS.ErrnoException) => {
  process.exit(fault.code === 'EPIPE' ? EXIT_STATUS.judged : EXIT_STATUS.notRead);
});
// Where nobody reads the errors, the exit status still tells; writing about it would fail again, for ever.
process.stderr.on('error', () => undefined);
process.on('uncaughtException', lastResort);
process.on('unhandledRejection', lastResort);

/** The folder in which the person typed the command; npm itself changes to the root of the repository. */
const folder = process.env.npm_lifecycle_event === 'score' ? (process.env.INIT_CWD ?? process.cwd()) : process.cwd();

try {
  process.exitCode = await runScore(process.argv.slice(2), {
    out: (text) => process.stdout.write(text),
    err: (text) => process.stderr.write(text),
    stdin: process.stdin,
    folder,
    now: () => localInstant(new Date()),
    read: readCapture,
    memory: captureMemory,
    score: scoreCapture,
    writeSheet: (sheet, to) => writeSheet(sheet, to, folder),
  });
} catch (fault) {
  lastResort(fault);
}

/** A broken promise inside the program: one sentence and never a stack. TAILTRACE_TRACE=1 shows where, for its makers. */
function lastResort(fault: unknown): void {
  if (process.env.TAILTRACE_TRACE === '1') process.stderr.write(`${fault instanceof Error ? fault.stack : fault}\n`);
  process.stderr.write(
    'A fault in Tailtrace itself stopped the command before it was done; what was printed until then is whole. Run it again with TAILTRACE_TRACE=1 and report what it shows.\n',
  );
  process.exitCode = EXIT_STATUS.notRead;
}
