// Starts the real program in the real Electron, as a person's computer would, and hands the test its first page.
// Nothing here waits by the clock: the window says itself when it has settled. Needs a screen (npm test gives a hidden
// one) and a finished build (npm run build).

import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { _electron, type ElectronApplication, type Page } from 'playwright';
import { electronArguments, isRoot } from '../../main/setup/launch.mjs';
import { presentRuntime } from '../../main/setup/runtime.mjs';

export interface LaunchWish {
  /** Behind the program's name: captures to open, flags. */
  readonly args?: readonly string[];
  /** Kept after closing, so that a test can start again on it. Without it a new one is made, and removed on closing. */
  readonly dataFolder?: string;
  /** Of the window's content, in pixels. */
  readonly size?: { readonly width: number; readonly height: number };
  /** A packed program, in place of the source tree on the runtime that is here. */
  readonly packed?: string;
  readonly env?: Readonly<Record<string, string>>;
}

export interface Program {
  readonly app: ElectronApplication;
  readonly page: Page;
  readonly dataFolder: string;
  /** What the page put out as errors, and errors nobody caught. A walk ends with this list empty. */
  readonly errors: readonly string[];
  /** Resolves when the window has drawn what was asked for. */
  settled(): Promise<void>;
  /** The next file dialogs to open are answered with these paths; with none, as if cancelled. */
  answerOpenDialogs(paths: readonly string[]): Promise<void>;
  /** The next dialogs to save are answered with this path; with null, as if cancelled. */
  answerSaveDialogs(path: string | null): Promise<void>;
  /** Closes the way a person does and waits until the process has ended. Fails if it does not end. */
  close(): Promise<void>;
  /** Ends the process at once, as a crash or a power cut would. The data folder stays. */
  kill(): Promise<void>;
}

const START_LIMIT_MS = 120_000;
const END_LIMIT_MS = 60_000;

/** The mark that the window puts on its root element while nothing is loading, scoring or waiting to be drawn. */
const SETTLED = 'html[data-settled="true"]';

export async function makeDataFolder(): Promise<string> {
  return mkdtemp(join(tmpdir(), 'tailtrace-test-'));
}

export async function launchProgram(wish: LaunchWish = {}): Promise<Program> {
  const dataFolder = wish.dataFolder ?? (await makeDataFolder());
  const app = await _electron.launch({
    executablePath: wish.packed ?? runtimeHere(),
    args: argumentsFor(wish),
    env: { ...inherited(), TAILTRACE_DATA_DIR: dataFolder, ...wish.env },
    timeout: START_LIMIT_MS,
  });
  const errors: string[] = [];
  app.on('window', (page) => listen(page, errors));
  const page = await app.firstWindow({ timeout: START_LIMIT_MS });
  listen(page, errors);
  if (wish.size !== undefined) await resize(app, wish.size);
  return {
    app,
    page,
    dataFolder,
    errors,
    settled: () => page.locator(SETTLED).waitFor({ state: 'attached', timeout: START_LIMIT_MS }),
    answerOpenDialogs: (paths) => answerOpen(app, paths),
    answerSaveDialogs: (path) => answerSave(app, path),
    close: async () => {
      await closeWhole(app);
      if (wish.dataFolder === undefined) await rm(dataFolder, { recursive: true, force: true });
    },
    kill: async () => {
      const ended = whenEnded(app);
      app.process().kill('SIGKILL');
      await ended;
    },
  };
}

function runtimeHere(): string {
  const runtime = presentRuntime();
  if (runtime === null)
    throw new Error('There is no Electron here yet. Run "npm test" or "npm start" once: they fetch it.');
  return runtime.executable;
}

function argumentsFor(wish: LaunchWish): string[] {
  const given = wish.args ?? [];
  if (wish.packed === undefined) return electronArguments(given);
  return [...given, ...(isRoot() ? ['--no-sandbox'] : [])];
}

function inherited(): Record<string, string> {
  const kept = Object.entries(process.env).filter((entry): entry is [string, string] => entry[1] !== undefined);
  return Object.fromEntries(kept);
}

const listened = new WeakSet<Page>();

function listen(page: Page, errors: string[]): void {
  if (listened.has(page)) return;
  listened.add(page);
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  page.on('pageerror', (error) => errors.push(error.stack ?? error.message));
  page.on('crash', () => errors.push('the page crashed'));
}

async function resize(app: ElectronApplication, size: { width: number; height: number }): Promise<void> {
  await app.evaluate(({ BrowserWindow }, { width, height }) => {
    BrowserWindow.getAllWindows()[0]?.setContentSize(width, height);
  }, size);
}

async function answerOpen(app: ElectronApplication, paths: readonly string[]): Promise<void> {
  await app.evaluate(({ dialog }, filePaths) => {
    dialog.showOpenDialog = async () => ({ canceled: filePaths.length === 0, filePaths: [...filePaths] });
  }, paths);
}

async function answerSave(app: ElectronApplication, path: string | null): Promise<void> {
  await app.evaluate(({ dialog }, filePath) => {
    dialog.showSaveDialog = async () => ({ canceled: filePath === null, filePath: filePath ?? '' });
  }, path);
}

function whenEnded(app: ElectronApplication): Promise<void> {
  const child = app.process();
  if (child.exitCode !== null || child.signalCode !== null) return Promise.resolve();
  return new Promise((done) => {
    child.once('exit', () => done());
  });
}

async function closeWhole(app: ElectronApplication): Promise<void> {
  const ended = whenEnded(app);
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<'late'>((done) => {
    timer = setTimeout(() => done('late'), END_LIMIT_MS);
  });
  const outcome = await Promise.race([Promise.all([app.close(), ended]), late]);
  clearTimeout(timer);
  if (outcome !== 'late') return;
  app.process().kill('SIGKILL');
  throw new Error(`The program did not end within ${END_LIMIT_MS / 1000} s after it was closed.`);
}
