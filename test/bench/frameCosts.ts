// What a move costs: everything the page's own thread does between the turn of the wheel and the end of the frame that
// shows it, the pixels of the canvases included. Taken from outside, by the browser's own account of its tasks.

import type { CDPSession, Page } from 'playwright';

declare global {
  interface Window {
    benchFrame(): Promise<void>;
  }
}

/** Makes `moves` moves and gives the milliseconds of each. `move` turns the wheel, or does what else changes the view. */
export async function measureMoves(
  page: Page,
  session: CDPSession,
  moves: number,
  move: (index: number) => Promise<void>,
): Promise<number[]> {
  await page.evaluate(prepare);
  // Time that the thread really had: what other programs took meanwhile does not count.
  await session.send('Performance.enable', { timeDomain: 'threadTicks' });
  const costs: number[] = [];
  for (let index = 0; index < moves; index++) {
    const before = await busyMs(session);
    await move(index);
    await page.evaluate(() => window.benchFrame());
    costs.push((await busyMs(session)) - before);
  }
  return costs;
}

/** In the page: a promise for the end of the next frame with its pixels drawn. */
function prepare(): void {
  window.benchFrame = () =>
    new Promise((resolve) => {
      requestAnimationFrame(() => {
        // A canvas puts its drawing off until somebody looks: one pixel of each is looked at.
        for (const canvas of document.querySelectorAll('canvas')) canvas.getContext('2d')?.getImageData(0, 0, 1, 1);
        resolve();
      });
    });
}

async function busyMs(session: CDPSession): Promise<number> {
  const { metrics } = await session.send('Performance.getMetrics');
  return (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? 0) * 1000;
}

/** The value below which `share` of the costs lie. */
export function quantile(costs: readonly number[], share: number): number {
  const sorted = [...costs].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}
