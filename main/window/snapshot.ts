import type { BrowserWindow, NativeImage, WebContents } from 'electron';
import { atomicWrite } from '../store/atomicWrite.ts';
import { systemFiles } from '../store/fileLayer.ts';

/** A page that has not settled by then will not; the setting-up around it waits twice as long. */
const LIMIT_MS = 60_000;

/** Waits until the page has drawn what was asked for, and writes its picture. Gives the exit status. */
export async function takeSnapshot(window: BrowserWindow, picture: string, settled: Promise<void>): Promise<number> {
  const late = new Promise<'late'>((resolve) => setTimeout(() => resolve('late'), LIMIT_MS));
  if ((await Promise.race([settled, late])) === 'late') {
    process.stderr.write('The window did not settle, so no picture was taken.\n');
    return 1;
  }
  const image = await stillPicture(window.webContents);
  if (image.isEmpty()) {
    process.stderr.write('The window showed nothing to take a picture of.\n');
    return 1;
  }
  await atomicWrite(systemFiles, picture, image.toPNG(), { mode: 0o666 });
  return 0;
}

/** A page that goes on moving is taken as it is after so many pictures. */
const MOST_PICTURES = 20;

/** On a busy machine a picture may show the frame before the last: one is taken until it shows the same as the one before. */
async function stillPicture(page: WebContents): Promise<NativeImage> {
  let image = await page.capturePage();
  for (let taken = 1; taken < MOST_PICTURES; taken++) {
    const next = await page.capturePage();
    if (next.toBitmap().equals(image.toBitmap())) return next;
    image = next;
  }
  return image;
}
