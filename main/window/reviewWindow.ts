// The window in which captures are reviewed: its frame, its place on the screen, and how it goes.

import { join } from 'node:path';
import { BrowserWindow, nativeTheme, screen } from 'electron';
import { tell } from '../messages/tell.ts';
import type { AppFolders } from '../program/appFolders.ts';
import { START_PAGE } from '../safety/windowAddress.ts';
import type { KeptFile } from '../store/keptFile.ts';
import { placeOnScreen, type Rectangle, SMALLEST, type WindowState } from './windowState.ts';

export interface ReviewWindowParts {
  readonly folders: AppFolders;
  readonly state: KeptFile<WindowState>;
  /** Size of the content where a picture is wanted, and then no place is remembered. */
  readonly fixedSize: { readonly width: number; readonly height: number } | null;
}

/** Paper and night, as the page will draw them: nothing flashes while it loads. */
const GROUND = { light: '#fdfcf8', dark: '#16181a' };

/** The page has this long to save when the window is closed; then it goes, and what the store holds is whole. */
const LAST_SAVE_MS = 3000;

/** Opens the window and loads its page. `tend` gets it before the page starts, which may ask for things at once. */
export async function openReviewWindow(parts: ReviewWindowParts, tend: (window: BrowserWindow) => void): Promise<void> {
  const before = await parts.state.read();
  const window = new BrowserWindow({
    ...(parts.fixedSize ?? bounds(before)),
    useContentSize: parts.fixedSize !== null,
    minWidth: SMALLEST.width,
    minHeight: SMALLEST.height,
    show: false,
    title: 'Tailtrace',
    icon: parts.folders.icon,
    backgroundColor: nativeTheme.shouldUseDarkColors ? GROUND.dark : GROUND.light,
    webPreferences: {
      preload: join(parts.folders.main, 'preload.cjs'),
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webviewTag: false,
      navigateOnDragDrop: false,
      spellcheck: false,
    },
  });
  if (parts.fixedSize === null) {
    if (before.maximized) window.maximize();
    if (before.fullScreen) window.setFullScreen(true);
    rememberPlace(window, parts.state);
  }
  window.once('ready-to-show', () => window.show());
  window.on('page-title-updated', (event) => event.preventDefault()); // the shell writes the title
  tend(window);
  await window.loadURL(START_PAGE);
}

function bounds(before: WindowState): Rectangle {
  const main = screen.getPrimaryDisplay();
  const others = screen.getAllDisplays().filter((display) => display.id !== main.id);
  const screens = [main, ...others].map((display) => display.workArea);
  return placeOnScreen(before.bounds, screens);
}

function rememberPlace(window: BrowserWindow, state: KeptFile<WindowState>): void {
  const keep = (): void => {
    const now: WindowState = {
      bounds: window.getNormalBounds(),
      maximized: window.isMaximized(),
      fullScreen: window.isFullScreen(),
    };
    void state.write(now).catch(() => {}); // the next start opens where this one did
  };
  window.once('close', keep);
}

export interface GentleClose {
  /** Resolves when the page says that everything is saved. */
  ready(): Promise<void>;
  /** Resolves when the store has nothing left to write. */
  settled(): Promise<void>;
}

/** Lets the page save before its window goes. */
export function closeGently(window: BrowserWindow, { ready, settled }: GentleClose): void {
  let saved = false;
  let asking = false;
  window.on('close', (event) => {
    if (saved || window.webContents.isCrashed()) return;
    event.preventDefault();
    if (asking) return;
    asking = true;
    const late = new Promise<void>((resolve) => setTimeout(resolve, LAST_SAVE_MS));
    const answered = ready();
    tell(window.webContents, 'closing', null);
    void Promise.race([answered, late])
      .then(settled)
      .finally(() => {
        saved = true;
        if (!window.isDestroyed()) window.close();
      });
  });
}
