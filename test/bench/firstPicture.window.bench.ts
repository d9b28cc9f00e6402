// npm run bench -- firstPicture: how long a person looks at nothing. The real program opens one hour at 1 kHz, 3.6 million
// rows, and is watched from the outside: the first moment at which a pane shows some of a trace, the one at which all
// panes show the whole capture, and the one from which they stand as they stand in the end, on the stretch that the program
// offers to look at. Beside it, in the same run, what pandas with matplotlib takes for a picture of the same four channels,
// whole, in four panels, its imports not counted; where they are not installed, that is said.

import { spawnSync } from 'node:child_process';
import { resolve } from 'node:path';
import { launchProgram } from '../support/launchProgram.ts';
import { HOUR_CAPTURE, writeLargeCapture } from './largeCaptures.ts';
import { allInk, firstInk, type PaneSight, sightsOf, watchPanes, wholeInk } from './panePictures.ts';

const ROUNDS = 3;
const SIZE = { width: 1280, height: 760 };
const OPEN_LIMIT_MS = 120_000;

const { path, bytes } = writeLargeCapture(HOUR_CAPTURE);
const first: number[] = [];
const whole: number[] = [];
const last: number[] = [];
const python: number[] = [];
for (let round = 0; round < ROUNDS; round++) {
  const sights = await openInProgram(resolve(path));
  first.push(firstInk(sights));
  whole.push(wholeInk(sights));
  last.push(allInk(sights));
  const seconds = pictureByPython(path);
  if (seconds !== null) python.push(seconds * 1000);
}
say(
  `${HOUR_CAPTURE.words}: ${HOUR_CAPTURE.rows} rows, ${(bytes / 1e6).toFixed(0)} MB; medians of ${ROUNDS} interleaved runs`,
);
say(`  from Open to the first of a trace     ${figure(first)}`);
say(`  to all panes complete, whole capture  ${figure(whole)}`);
say(`  to all panes on the stretch offered   ${figure(last)}`);
if (python.length === 0) say('  pandas with matplotlib is not installed here (python3-pandas, python3-matplotlib)');
else {
  say(`  pandas with matplotlib, four panels   ${figure(python)}`);
  say(
    `  whole capture over pandas with matplotlib: ${(median(whole) / median(python)).toFixed(2)} (at most 0.20); stretch offered: ${(median(last) / median(python)).toFixed(2)}`,
  );
}

/** Starts the program, opens the capture by the menu as a person would, and gives what the panes showed meanwhile. */
async function openInProgram(capture: string): Promise<readonly PaneSight[]> {
  const opened = await launchProgram({ size: SIZE });
  try {
    await opened.settled();
    await opened.answerOpenDialogs([capture]);
    await watchPanes(opened.page);
    await opened.app.evaluate(({ Menu }) => Menu.getApplicationMenu()?.getMenuItemById('file.open')?.click());
    await opened.page.locator('.tracePane').first().waitFor({ state: 'attached', timeout: OPEN_LIMIT_MS });
    await opened.page.locator('html[data-settled="true"]').waitFor({ state: 'attached', timeout: OPEN_LIMIT_MS });
    return await sightsOf(opened.page);
  } finally {
    await opened.close();
  }
}

/** Seconds from reading to the picture of four panels of the same size, or null where it is not installed. */
function pictureByPython(capture: string): number | null {
  const code = `
import io, time, pandas, matplotlib
matplotlib.use('Agg')
matplotlib.rcParams['agg.path.chunksize'] = 20000
import matplotlib.pyplot as plt
t = time.perf_counter()
data = pandas.read_csv(${JSON.stringify(capture)})
figure, axes = plt.subplots(4, 1, sharex=True, figsize=(${SIZE.width / 100}, ${SIZE.height / 100}), dpi=100)
for axis, column in zip(axes, [1, 2, 3, 5]):
    axis.plot(data.iloc[:, 0], data.iloc[:, column])
figure.savefig(io.BytesIO(), format='png')
print(time.perf_counter() - t)`;
  const { status, stdout } = spawnSync('/usr/bin/python3', ['-c', code], { encoding: 'utf8', timeout: 300_000 });
  return status === 0 ? Number(stdout.trim()) : null;
}

function median(all: readonly number[]): number {
  return [...all].sort((a, b) => a - b)[all.length >> 1] ?? Number.NaN;
}

function figure(all: readonly number[]): string {
  return `${(median(all) / 1000).toFixed(2).padStart(8)} s`;
}

function say(line: string): void {
  process.stdout.write(`${line}\n`);
}
