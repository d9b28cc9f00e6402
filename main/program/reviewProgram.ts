// The running program with a window: its parts, made once, and how they hang together.

import { join } from 'node:path';
import { app, type BrowserWindow, dialog, ipcMain, nativeTheme, session, utilityProcess } from 'electron';
import { z } from 'zod';
import { DEFAULT_SETTINGS } from '../../core/bridge/defaultSettings.ts';
import { keptSettingsSchema, type Picked, pickedSchema } from '../../core/bridge/shellMessages.ts';
import { headerChoiceSchema } from '../../core/record/headerChoice.ts';
import { BundleWorker } from '../bundles/bundleWorker.ts';
import { CaptureLibrary } from '../captures/captureLibrary.ts';
import { type CoreClient, CoreProcess } from '../coreProcess/coreProcess.ts';
import { MenuBar } from '../menu/menuBar.ts';
import { allHandlers } from '../messages/handlers/index.ts';
import type { ShellTools } from '../messages/handlers/tools.ts';
import { PORT_CHANNEL } from '../messages/preloadRequests.ts';
import { receiveAll } from '../messages/receive.ts';
import { tell } from '../messages/tell.ts';
import { lockSession } from '../safety/lockSession.ts';
import { serveWindowFiles, windowListFile } from '../safety/privateScheme.ts';
import { systemFiles } from '../store/fileLayer.ts';
import { findKeptCapture } from '../store/keptCaptures.ts';
import { keptFile } from '../store/keptFile.ts';
import { sweepTemporary } from '../store/sweepTemporary.ts';
import { VehicleStore } from '../store/vehicleStore.ts';
import { closeGently, openReviewWindow } from '../window/reviewWindow.ts';
import { takeSnapshot } from '../window/snapshot.ts';
import { FIRST_STATE, windowStateSchema } from '../window/windowState.ts';
import { appFolders } from './appFolders.ts';
import type { ProgramArguments, SnapshotWish } from './arguments.ts';
import { jobsInProcess } from './jobsInProcess.ts';
import { placesFile } from './places.ts';
import { Signal } from './signal.ts';

/** The sample drive that a picture shows where no capture is named. */
const PICTURED_DRIVE = 'van-before';

export class ReviewProgram {
  readonly #folders = appFolders(app.getAppPath());
  readonly #data = app.getPath('userData');
  readonly #places = placesFile(systemFiles, join(this.#data, 'places.json'));
  readonly #windowState = keptFile(systemFiles, join(this.#data, 'window.json'), windowStateSchema, FIRST_STATE);
  readonly #settings = keptFile(systemFiles, join(this.#data, 'settings.json'), keptSettingsSchema, DEFAULT_SETTINGS);
  readonly #store = new VehicleStore({
    folder: join(this.#data, 'vehicles'),
    files: systemFiles,
    nowMs: () => Date.now(),
  });
  readonly #library = new CaptureLibrary({
    places: this.#places,
    drives: this.#folders.drives,
    keptCapture: (sha256) => findKeptCapture(systemFiles, join(this.#data, 'vehicles'), sha256),
  });
  readonly #bundles = new BundleWorker(jobsInProcess(join(this.#folders.main, 'bundleProcess.cjs')));
  readonly #core = new CoreProcess({
    fork: () =>
      utilityProcess.fork(join(this.#folders.main, 'coreProcess.cjs'), [], { serviceName: 'Tailtrace captures' }),
    whichFile: (token) => this.#library.tokens.find(token),
    tellFault,
  });
  readonly #menu = new MenuBar({
    platform: process.platform === 'darwin' || process.platform === 'win32' ? process.platform : 'linux',
    programName: app.getName(),
    run: (id) => this.#tellWindow((contents) => tell(contents, 'command', { id })),
    openRecent: (capture) => this.#offer([capture]),
  });
  readonly #readyToClose = new Signal();
  readonly #settled = new Signal();
  readonly #offered: Picked[] = [];
  #window: BrowserWindow | null = null;
  #listening = false;
  #client: CoreClient | null = null;

  async start({ captures, snapshot }: ProgramArguments): Promise<void> {
    lockSession(session.defaultSession);
    await serveWindowFiles(session.defaultSession, this.#folders.renderer, windowListFile(this.#folders.main));
    this.#core.start();
    await this.#store.start();
    await sweepTemporary(systemFiles, this.#data, Date.now());
    nativeTheme.themeSource = (await this.#settings.read()).theme;
    receiveAll(ipcMain, {
      handlers: allHandlers(this.#tools()),
      isOurContents: (sender) => sender === this.#window?.webContents,
      heard: () => this.#pageListens(),
      tellFault,
    });
    this.#menu.showRecent(await this.#library.recent());
    const settled = this.#settled.next();
    this.#offer(await this.#firstCaptures(captures, snapshot));
    await this.showWindow(snapshot);
    if (snapshot !== null) {
      const status = await this.#picture(snapshot, settled);
      this.end();
      app.exit(status);
    }
  }

  /** Opens the window, or brings the one that is there to the front. */
  async showWindow(snapshot: SnapshotWish | null = null): Promise<void> {
    if (this.#window !== null) {
      if (this.#window.isMinimized()) this.#window.restore();
      this.#window.focus();
      return;
    }
    const parts = { folders: this.#folders, state: this.#windowState, fixedSize: snapshot };
    await openReviewWindow(parts, (window) => this.#tend(window));
  }

  /** Captures that were given from outside while the program runs. */
  async open(paths: readonly string[]): Promise<void> {
    await this.showWindow();
    this.#offer(await Promise.all(paths.map((path) => this.#library.pick(path))));
  }

  /** The program ends: the process of the captures goes with it, and whatever is done on bundles. */
  end(): void {
    this.#bundles.cancel();
    this.#core.end();
  }

  #tend(window: BrowserWindow): void {
    this.#window = window;
    closeGently(window, {
      ready: () => this.#readyToClose.next(),
      settled: () => this.#allWritten(),
    });
    window.webContents.on('did-start-navigation', ({ isMainFrame, isSameDocument }) => {
      if (isMainFrame && !isSameDocument) this.#listening = false; // another page, or the same one anew
    });
    window.on('closed', () => {
      this.#disconnectCore();
      this.#window = null;
      this.#listening = false;
    });
    window.webContents.on('render-process-gone', (_event, { reason }) => void this.#pageGone(window, reason));
  }

  /** Whatever was to be kept is on disk: a small file answers when its writes before have ended. */
  async #allWritten(): Promise<void> {
    await Promise.all([this.#store.settle(), this.#windowState.read(), this.#places.read(), this.#settings.read()]);
  }

  async #firstCaptures(paths: readonly string[], snapshot: SnapshotWish | null): Promise<Picked[]> {
    if (paths.length > 0 || snapshot === null) return Promise.all(paths.map((path) => this.#library.pick(path)));
    const drive = await this.#library.sampleNamed(PICTURED_DRIVE);
    return drive === null ? [] : [drive];
  }

  /** Hands captures to the page, or keeps them for it until it listens. */
  #offer(picked: readonly Picked[]): void {
    this.#offered.push(...picked.map((one) => pickedSchema.strip().parse(one)));
    if (this.#listening) this.#handOver();
  }

  /** A page has begun: what was waiting for it comes before the answer to its first question. */
  #pageListens(): void {
    if (this.#listening) return;
    this.#listening = true;
    this.#handOver();
  }

  #handOver(): void {
    const offered = this.#offered.splice(0);
    if (offered.length > 0) this.#tellWindow((contents) => tell(contents, 'openCaptures', offered));
  }

  async #picture({ picture }: SnapshotWish, settled: Promise<void>): Promise<number> {
    return this.#window === null ? 1 : takeSnapshot(this.#window, picture, settled);
  }

  #tools(): ShellTools {
    return {
      folders: this.#folders,
      store: this.#store,
      library: this.#library,
      places: this.#places,
      settings: this.#settings,
      columnChoices: keptFile(
        systemFiles,
        join(this.#data, 'columns.json'),
        z.array(headerChoiceSchema).readonly(),
        [],
      ),
      exporting: {
        files: systemFiles,
        places: this.#places,
        window: () => this.#window,
        documents: () => app.getPath('documents'),
      },
      bundles: this.#bundles,
      menu: this.#menu,
      window: () => this.#window,
      connectCore: () => this.#connectCore(),
      readyToClose: () => this.#readyToClose.give(),
      settled: () => this.#settled.give(),
    };
  }

  /** The page, or a page that was loaded anew, gets a port of its own; what an earlier page held is let go. */
  #connectCore(): void {
    this.#disconnectCore();
    this.#client = {
      take: (port) => this.#tellWindow((contents) => contents.postMessage(PORT_CHANNEL, null, [port])),
      lost: () => this.#tellWindow((contents) => tell(contents, 'coreLost', null)),
    };
    this.#core.connect(this.#client);
  }

  #disconnectCore(): void {
    if (this.#client !== null) this.#core.disconnect(this.#client);
    this.#client = null;
  }

  #tellWindow(say: (contents: BrowserWindow['webContents']) => void): void {
    if (this.#window !== null && !this.#window.isDestroyed()) say(this.#window.webContents);
  }

  async #pageGone(window: BrowserWindow, reason: string): Promise<void> {
    if (reason === 'clean-exit' || window.isDestroyed()) return;
    this.#disconnectCore();
    const { response } = await dialog.showMessageBox(window, {
      type: 'warning',
      message: 'The window has stopped working.',
      detail: 'Everything that was saved is whole. Load the window again to go on where you were.',
      buttons: ['Load again', 'Quit'],
      defaultId: 0,
      cancelId: 1,
      noLink: true,
    });
    if (response === 0 && !window.isDestroyed()) window.webContents.reload();
    else app.quit();
  }
}

/** Faults in the program itself: written down for whoever runs it from a terminal, never sent anywhere. */
function tellFault(fault: unknown): void {
  process.stderr.write(`${fault instanceof Error ? (fault.stack ?? fault.message) : String(fault)}\n`);
}
