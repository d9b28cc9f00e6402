// Property tests draw the same cases on every machine. FC_SEED=number draws others, FC_RUNS=number draws more: a nightly
// run sets both. A failure prints its seed and path, with which it can be called up again.

import fc from 'fast-check';

/** Chosen once by typing; any number would do. */
const EVERYDAY_SEED = 20_261_124;

const runs = process.env.FC_RUNS;

fc.configureGlobal({
  seed: Number(process.env.FC_SEED ?? EVERYDAY_SEED),
  ...(runs === undefined ? {} : { numRuns: Number(runs) }),
});
