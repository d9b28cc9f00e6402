// How long scoring takes, in Node on one core: npm run bench -- scoring. Medians of several rounds; the first is thrown
// away, since it pays for the compiler.

import { stdout } from 'node:process';
import type { Capture } from '../../core/capture/capture.ts';
import type { Channel } from '../../core/capture/channel.ts';
import { judgeWindow } from '../../core/findings/judgeWindow.ts';
import { MEASURES } from '../../core/measures/index.ts';
import { cutWindow } from '../../core/measures/windowData.ts';
import { fitConverter } from '../../core/model/fitConverter.ts';
import { scoreCapture } from '../../core/scoreCapture.ts';
import { suggestWindows } from '../../core/windows/suggestWindows.ts';
import type { CaptureWindow } from '../../core/windows/window.ts';
import { pairCapture } from '../support/drivenPair.ts';
import { sampleCapture } from '../support/sampleCapture.ts';

const ROUNDS = 5;
const HOURS = 10;

const WINDOW: CaptureWindow = { startS: 0, endS: 60, bank: 1, kind: 'hold', origin: 'byHand' };

function time(words: string, promisedMs: number, run: () => () => void): void {
  const times: number[] = [];
  for (let round = 0; round <= ROUNDS; round++) {
    const prepared = run();
    const began = performance.now();
    prepared();
    times.push(performance.now() - began);
  }
  const median = times.slice(1).sort((a, b) => a - b)[ROUNDS >> 1] ?? Number.NaN;
  stdout.write(
    `  ${words.padEnd(62)}${median.toFixed(0).padStart(6)} ms  promised ${promisedMs} ms  ${(median / promisedMs).toFixed(2)} of it\n`,
  );
}

/** A capture of the same samples that no remembered answer knows. */
function fresh(capture: Capture): Capture {
  return { ...capture, channels: capture.channels.map((channel) => ({ ...channel })) };
}

/** The forty minutes on the road again and again, until they are ten hours at ten rows a second. */
function longDrive(road: Capture): Capture {
  const times = Math.ceil((HOURS * 3600) / road.durationS);
  const channels = road.channels.map((channel): Channel => {
    const length = channel.values.length;
    const values = new Float32Array(length * times);
    for (let k = 0; k < times; k++) values.set(channel.values, k * length);
    return { ...channel, values, time: { kind: 'regular', startS: 0, stepS: 0.1, length: values.length } };
  });
  const rows = channels[0]?.values.length ?? 0;
  return { ...road, channels, rows, durationS: (rows - 1) * 0.1 };
}

const hold = pairCapture({ seed: 3, seconds: 60, hz: 1.9, through: 0.4, lagS: 0.3 }, 1000);
const road = longDrive(await sampleCapture('road-drive.csv'));
stdout.write(
  `a hold of 60 s at 1000 rows a second; ${(road.durationS / 3600).toFixed(1)} h at 10 rows a second, ${road.rows} rows\n`,
);

time('one window of 60 s at 1 kHz: every measure but the model fit', 50, () => {
  const data = cutWindow(fresh(hold), WINDOW, 1);
  const measures = MEASURES.filter(({ id }) => !id.startsWith('storage'));
  return () => {
    for (const measure of measures) measure.compute(data);
  };
});
time('the same, model fit alone', 500, () => {
  const data = cutWindow(fresh(hold), WINDOW, 1);
  return () => fitConverter(data);
});
time('the same, judged with everything', 550, () => {
  const capture = fresh(hold);
  return () => judgeWindow(capture, WINDOW, 1, []);
});
time('ten hours: suggestions', 2000, () => {
  const capture = fresh(road);
  return () => suggestWindows(capture);
});
time('ten hours: suggestions, and all windows judged with their fits', 2000, () => {
  const capture = fresh(road);
  return () => scoreCapture(capture, { windows: null, bank: null, thermal: [], troubleCodes: [] });
});
