import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright';

/** Where Debian and its relatives put Chromium, and where an already installed browser of the same engine may lie. */
const PLACES = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** The current browser of this machine: newer than the engine of the fallback runtime, as the released program's is. */
export async function launchSystemBrowser(): Promise<Browser> {
  const executablePath = PLACES.find(existsSync);
  if (executablePath === undefined) {
    throw new Error(
      `No current browser is here. Install the system's package "chromium". Looked at ${PLACES.join(', ')}.`,
    );
  }
  const asRoot = process.getuid?.() === 0;
  return chromium.launch({ executablePath, args: asRoot ? ['--no-sandbox'] : [] });
}
