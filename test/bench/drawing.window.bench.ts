// npm run bench -- drawing: pans and zooms 200 times in the real program over ten hours at 1000 rows a second, over six
// minutes of the same, and over four bare panes of the drawing library, all in one run. Prints milliseconds of the
// page's own thread for each move, pixels included; the yardstick of the same run is what they are to be read against.
// Environment: TAILTRACE_BENCH_ROWS for another length.

import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright';
import { launchProgram } from '../support/launchProgram.ts';
import { openBarePanes } from './barePanes.ts';
import { measureMoves, quantile } from './frameCosts.ts';
import { writeLongDrive } from './longDrive.ts';

const SIZE = { width: 1280, height: 760 };
const MOVES = 200;
const SHORT_ROWS = 360_000;
const LONG_ROWS = Number(process.env.TAILTRACE_BENCH_ROWS ?? 36_000_000);
const OPEN_LIMIT_MS = 600_000;
/** Moves before the measured ones, so that nothing is compiled or loaded for the first time among them. */
const WARM_MOVES = 40;

const folder = await mkdtemp(join(tmpdir(), 'tailtrace-bench-'));
try {
  const short = join(folder, 'six-minutes.mf4');
  const long = join(folder, 'ten-hours.mf4');
  await writeLongDrive(short, SHORT_ROWS);
  await writeLongDrive(long, LONG_ROWS);
  const rows = [
    ['four bare panes of the library', await bare()],
    [`the program, ${SHORT_ROWS.toLocaleString('en')} samples a trace`, await program(short)],
    [`the program, ${LONG_ROWS.toLocaleString('en')} samples a trace`, await program(long)],
  ] as const;
  print(rows);
} finally {
  await rm(folder, { recursive: true, force: true });
}

async function program(capture: string): Promise<number[]> {
  const opened = await launchProgram({ args: [capture], size: SIZE });
  try {
    await opened.page.locator('html[data-settled="true"]').waitFor({ state: 'attached', timeout: OPEN_LIMIT_MS });
    // Four panes, nothing but paper: each sensor in its own pane, both margins folded.
    await opened.app.evaluate(({ Menu }) => {
      for (const id of ['view.overlay', 'view.margins']) Menu.getApplicationMenu()?.getMenuItemById(id)?.click();
    });
    await opened.page.waitForFunction(() => document.querySelectorAll('.tracePane').length === 4);
    await opened.page.keyboard.press('Control+0');
    return await moveThrough(opened.page);
  } finally {
    await opened.close();
  }
}

async function bare(): Promise<number[]> {
  const opened = await launchProgram({ size: SIZE });
  try {
    await opened.settled();
    const page = await openBarePanes(opened.app, folder, SIZE);
    return await moveThrough(page);
  } finally {
    await opened.close();
  }
}

async function moveThrough(page: Page): Promise<number[]> {
  const session = await page.context().newCDPSession(page);
  await page.mouse.move(SIZE.width * 0.55, SIZE.height * 0.4);
  const turn = (index: number): Promise<void> => page.mouse.wheel(...turnOf(index));
  await measureMoves(page, session, WARM_MOVES, turn);
  const nothing = await measureMoves(page, session, 20, async () => undefined);
  const moved = await measureMoves(page, session, MOVES, turn);
  const own = quantile(nothing, 0.5);
  // What the measuring itself costs is taken off: it is the same for all three.
  return moved.map((cost) => Math.max(0, cost - own));
}

/** Ten notches in, ten strokes to the right, ten notches out, ten strokes to the left, over and over. */
function turnOf(index: number): [number, number] {
  const round = index % 40;
  if (round < 10) return [0, -100];
  if (round < 20) return [80, 0];
  return round < 30 ? [0, 100] : [-80, 0];
}

function print(rows: readonly (readonly [string, readonly number[]])[]): void {
  const figure = (value: number): string => value.toFixed(1).padStart(9);
  say(`${MOVES} moves each at ${SIZE.width} × ${SIZE.height}, ms of the page's own thread for a move`);
  say(`${''.padEnd(48)}   median     95 %      most`);
  for (const [words, costs] of rows) {
    say(words.padEnd(48) + [0.5, 0.95, 1].map((share) => figure(quantile(costs, share))).join(' '));
  }
  const median = (at: number): number => quantile(rows[at]?.[1] ?? [], 0.5);
  say(`long over short: ${(median(2) / median(1)).toFixed(2)}; long over bare: ${(median(2) / median(0)).toFixed(2)}`);
}

function say(line: string): void {
  process.stdout.write(`${line}\n`);
}
