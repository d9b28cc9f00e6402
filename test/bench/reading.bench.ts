// How fast a capture opens, side by side in one run: npm run bench -- reading. Runs are interleaved, so that whatever else
// the machine does falls on all of them alike, and each is a process of its own, so that nobody pays for another's
// garbage; medians and ratios are printed. With "memory" the peak of memory while the large capture is read is measured,
// with "run" one contestant once, after one small capture to warm up.

import { spawnSync } from 'node:child_process';
import { argv, execPath, memoryUsage, resourceUsage, stdout } from 'node:process';
import { HOUR_CAPTURE, OTHER_LAYOUTS, writeLargeCapture } from './largeCaptures.ts';
import { CONTESTANTS, type Contestant, product, readWhole } from './readingContestants.ts';

const ROUNDS = 5;
const WARM_UP = 'assets/drives/road-drive.csv';

async function main(): Promise<void> {
  const [, , task, name, path] = argv;
  if (task === 'run') {
    await runOnce(name ?? '', path ?? '');
    return;
  }
  const hour = writeLargeCapture(HOUR_CAPTURE);
  if (task === 'memory') {
    await printPeak(hour.path);
    return;
  }
  say(
    `${HOUR_CAPTURE.words}: ${HOUR_CAPTURE.rows} rows, ${megabytes(hour.bytes)} MB; medians of ${ROUNDS} interleaved runs`,
  );
  const medians = await measure(CONTESTANTS, hour.path);
  const own = medians.get(product) ?? Number.NaN;
  for (const [contestant, seconds] of medians) {
    say(
      `  ${contestant.name.padEnd(26)}${seconds.toFixed(2).padStart(7)} s${perSecond(hour.bytes, seconds)}  ${(seconds / own).toFixed(2).padStart(6)} times`,
    );
  }
  for (const layout of OTHER_LAYOUTS) {
    const { path, bytes } = writeLargeCapture(layout);
    const seconds = (await measure([product], path)).get(product) ?? Number.NaN;
    const speed = bytes / seconds / (hour.bytes / own);
    say(
      `  ${layout.words.padEnd(26)}${seconds.toFixed(2).padStart(7)} s${perSecond(bytes, seconds)}  ${speed.toFixed(2).padStart(6)} of the speed of commas`,
    );
  }
  const { stdout: peak } = spawnSync(execPath, ['--expose-gc', argv[1] ?? '', 'memory'], { encoding: 'utf8' });
  stdout.write(peak);
}

/** Median seconds of each contestant; those that are not installed are left out. */
async function measure(contestants: readonly Contestant[], path: string): Promise<Map<Contestant, number>> {
  const times = new Map<Contestant, number[]>();
  for (let round = 0; round < ROUNDS; round++) {
    for (const contestant of contestants) {
      const { stdout: printed } = spawnSync(execPath, ['--expose-gc', argv[1] ?? '', 'run', contestant.name, path], {
        encoding: 'utf8',
      });
      const seconds = Number.parseFloat(printed);
      if (Number.isNaN(seconds)) continue;
      times.set(contestant, [...(times.get(contestant) ?? []), seconds]);
    }
  }
  const medians = new Map<Contestant, number>();
  for (const [contestant, all] of times)
    medians.set(contestant, all.sort((a, b) => a - b)[all.length >> 1] ?? Number.NaN);
  return medians;
}

/** Prints the seconds of one contestant, or nothing where it is not installed. */
async function runOnce(name: string, path: string): Promise<void> {
  const contestant = CONTESTANTS.find((one) => one.name === name);
  await contestant?.run(WARM_UP);
  globalThis.gc?.();
  const seconds = (await contestant?.run(path)) ?? null;
  if (seconds !== null) say(String(seconds));
}

async function printPeak(path: string): Promise<void> {
  globalThis.gc?.();
  const before = memoryUsage().rss;
  const { values } = await readWhole(path);
  const peak = resourceUsage().maxRSS * 1024;
  // Times are values too, even where a start and a step stand for them.
  const all = values + HOUR_CAPTURE.rows;
  say(
    `  peak of memory above start: ${megabytes(peak - before)} MB, ${((peak - before) / all).toFixed(1)} bytes a value (pyramids counted in)`,
  );
}

function perSecond(bytes: number, seconds: number): string {
  return `${(bytes / 1e6 / seconds).toFixed(0).padStart(7)} MB/s`;
}

function megabytes(bytes: number): string {
  return (bytes / 1e6).toFixed(0);
}

function say(line: string): void {
  stdout.write(`${line}\n`);
}

await main();
