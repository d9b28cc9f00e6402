// The yardstick: four bare uPlot panes with 2000 ready points each, in a window of the same program and size, turned by
// the same wheel. No views to ask for, no windows, no readings: what the drawing library alone costs.

import { copyFile, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import type { ElectronApplication, Page } from 'playwright';

const require = createRequire(import.meta.url);

/** Opens the bare panes in a window of `app`, as large inside as `size`. Files go to `folder`. */
export async function openBarePanes(
  app: ElectronApplication,
  folder: string,
  size: { readonly width: number; readonly height: number },
): Promise<Page> {
  const uplot = dirname(require.resolve('uplot'));
  await copyFile(join(uplot, 'uPlot.iife.min.js'), join(folder, 'uPlot.js'));
  await copyFile(join(uplot, 'uPlot.min.css'), join(folder, 'uPlot.css'));
  const page = join(folder, 'bare.html');
  await writeFile(page, PAGE);
  const opened = app.waitForEvent('window');
  await app.evaluate(
    ({ BrowserWindow }, { place, width, height }) => {
      const window = new BrowserWindow({ width, height, useContentSize: true, webPreferences: { partition: 'bare' } });
      void window.loadFile(place);
    },
    { place: page, ...size },
  );
  const window = await opened;
  await window.waitForSelector('canvas');
  return window;
}

const PAGE = `<!doctype html>
<meta charset="utf-8">
<title>Bare panes</title>
<link rel="stylesheet" href="uPlot.css">
<style>body { margin: 0; overflow: hidden }</style>
<body>
<script src="uPlot.js"></script>
<script>
  const VIEWS = 20, POINTS = 2000, PANES = 4;
  const ready = Array.from({ length: VIEWS }, (_, view) => {
    const x = Float64Array.from({ length: POINTS }, (_, i) => view * 10 + i / 40);
    const y = Float64Array.from(x, (t, i) => 0.45 + 0.4 * Math.tanh(3 * Math.sin(t * 3)) + (i % 7) * 0.004);
    return [x, y];
  });
  const panes = Array.from({ length: PANES }, () => new uPlot({
    width: innerWidth, height: Math.floor(innerHeight / PANES), legend: { show: false },
    cursor: { show: false }, scales: { x: { time: false } },
    series: [{}, { stroke: '#0072b2', width: 1.5, points: { show: false } }],
  }, ready[0], document.body));
  let view = 0, stale = false;
  addEventListener('wheel', (event) => {
    event.preventDefault();
    view = (view + 1) % VIEWS;
    if (stale) return;
    stale = true;
    requestAnimationFrame(() => {
      stale = false;
      for (const pane of panes) pane.setData(ready[view]);
    });
  }, { passive: false });
</script>
</body>
`;
