// npm run calibrate [-- CASES]: fits the lines of the additive model to the calibration split of the simulated population,
// or to its first CASES cases, and writes core/findings/calibration.json, byte for byte the same on every machine. What is
// decided by hand in that file is kept.

import { readFileSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import process, { argv, stderr, stdout } from 'node:process';
import { fileURLToPath } from 'node:url';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import { featuresOf } from '../../core/findings/featuresOf.ts';
import { fitLines, type KnownCase, type LineWish } from '../../core/findings/fitLines.ts';
import { REASON_RULES } from '../../core/findings/reasons/index.ts';
import { drawCase, planOf, SPLIT_SIZE } from '../../core/simulation/population/drawCase.ts';
import { caseCount } from './caseCount.ts';

const FILE = 'core/findings/calibration.json';

interface Share {
  readonly from: number;
  readonly step: number;
  readonly cases: number;
}

/** A case, and where it stands in the split, so that the order does not depend on who was quicker. */
type Counted = KnownCase & { readonly index: number };

if (isMainThread) await calibrate();
else workShare(workerData);

/** Cars without a misleading fault whose converter is clearly good or clearly failed; in the gray zone either is right. */
function workShare({ from, step, cases }: Share): void {
  const known: Counted[] = [];
  for (let index = from; index < cases; index += step) {
    const { fault, kind, bank } = planOf(index, 'calibration');
    if (fault !== null || kind === 'gray') continue;
    const { capture, troubleCodes } = drawCase(index, 'calibration');
    known.push({ index, features: featuresOf(capture, bank, troubleCodes), failed: kind === 'failed' });
  }
  parentPort?.postMessage(known);
}

async function calibrate(): Promise<void> {
  const cases = caseCount(argv[2], SPLIT_SIZE);
  if (cases === null) {
    stderr.write(`${argv[2]} is no count of cases: give a whole number from 1 to ${SPLIT_SIZE}, or nothing for all.\n`);
    process.exitCode = 2;
    return;
  }
  const step = availableParallelism();
  const shares = Array.from({ length: step }, (_, from) => runShare({ from, step, cases }));
  const known = (await Promise.all(shares)).flat().sort((a, b) => a.index - b.index);
  const kept = JSON.parse(readFileSync(FILE, 'utf8'));
  const wishes = REASON_RULES.filter(({ id }) => !(id in kept.decided.lines)).map(
    ({ id }): LineWish => ({ id, ends: kept.decided.ends[id] ?? null }),
  );
  const lines = fitLines(known, wishes);
  const fitted = {
    split: 'calibration',
    cases,
    used: known.length,
    failed: known.filter(({ failed }) => failed).length,
  };
  writeFileSync(FILE, `${JSON.stringify({ ...kept, fitted, lines: { ...lines, ...kept.decided.lines } }, null, 2)}\n`);
  stdout.write(`${FILE}: ${known.length} cases, ${JSON.stringify(lines)}\n`);
}

function runShare(share: Share): Promise<Counted[]> {
  return new Promise((done, failed) => {
    const worker = new Worker(fileURLToPath(import.meta.url), { workerData: share });
    worker.once('message', done);
    worker.once('error', failed);
  });
}
