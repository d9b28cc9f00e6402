// The life of the program: one instance, start, windows, quit. What it does in between is in program/reviewProgram.ts.

import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { app, dialog } from 'electron';
import { z } from 'zod';
import { printCommand } from './print/printCommand.ts';
import { readArguments } from './program/arguments.ts';
import { ReviewProgram } from './program/reviewProgram.ts';
import { lockContents } from './safety/lockContents.ts';
import { registerPrivateScheme } from './safety/privateScheme.ts';

/** As in electron-builder.yml: Windows gathers a program's windows and recent files under it. */
const APP_ID = 'app.tailtrace.desktop';

const given = readArguments(process.argv.slice(1), process.cwd(), app.getAppPath());
const alone = given.snapshot !== null || given.print !== null;

registerPrivateScheme();
if (process.platform === 'win32') app.setAppUserModelId(APP_ID);
// Every window asks for the sandbox by itself; this asks for it once more, for all. As root there is none to be had, and
// the start script has said so: the call would take that word back and nothing would start.
if (!app.commandLine.hasSwitch('no-sandbox')) app.enableSandbox();
lockContents(app);
chooseDataFolder();

if (alone || app.requestSingleInstanceLock({ captures: given.captures })) start();
else app.quit(); // the program that runs already has been handed the captures

function start(): void {
  if (given.print !== null) {
    const wish = given.print;
    app.on('window-all-closed', () => {}); // the sheet's window goes before its pages are written
    void app.whenReady().then(async () => app.exit(await printCommand(wish)));
    return;
  }
  const program = new ReviewProgram();
  const early: string[] = [];
  let open = (paths: readonly string[]): void => void early.push(...paths);

  app.on('open-file', (event, path) => {
    event.preventDefault();
    open([path]);
  });
  app.on('second-instance', (_event, _words, _folder, handed) => {
    const captures = z.object({ captures: z.array(z.string()) }).safeParse(handed);
    open(captures.success ? captures.data.captures : []);
  });
  app.on('activate', () => open([]));
  // A window that saves first holds up a quit; when it has gone, the quit goes on.
  let quitting = false;
  app.on('before-quit', () => {
    quitting = true;
  });
  app.on('will-quit', () => program.end());
  app.on('window-all-closed', () => {
    if (quitting || process.platform !== 'darwin') app.quit();
  });

  app
    .whenReady()
    .then(async () => {
      await program.start({ ...given, captures: [...given.captures, ...early.splice(0)] });
      open = (paths) => void program.open(paths);
      if (early.length > 0) open(early);
    })
    .catch(notStarted);
}

/** A program whose own files or data folder cannot be used says so and ends, instead of standing there without a window. */
function notStarted(fault: unknown): void {
  process.stderr.write(`${fault instanceof Error ? (fault.stack ?? fault.message) : String(fault)}\n`);
  if (!alone) {
    dialog.showErrorBox(
      'Tailtrace could not start',
      'Its own files or its data folder could not be read. Install it again, or look whether its disk is full or locked. ' +
        'Vehicles that were saved are not touched.',
    );
  }
  app.exit(1);
}

/** A picture or a print must neither see nor change the records of the person at this computer. */
function chooseDataFolder(): void {
  const wanted = process.env.TAILTRACE_DATA_DIR;
  if (wanted !== undefined && wanted !== '') {
    mkdirSync(wanted, { recursive: true });
    app.setPath('userData', wanted);
  } else if (alone) {
    const folder = mkdtempSync(join(tmpdir(), 'tailtrace-'));
    app.setPath('userData', folder);
    process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
  }
}
