// T-SAVE-11, T-OPEN-10 and T-LOCK-1 in the real program: what a person has is never harmed, by opening it, by a crash, or
// by starting the program twice.

import { execFile } from 'node:child_process';
import { createHash } from 'node:crypto';
import { copyFileSync, mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { electronArguments } from '../../main/setup/launch.mjs';
import { presentRuntime } from '../../main/setup/runtime.mjs';
import '../../renderer/shell/shell.ts'; // what window.shell is
import { launchProgram, type Program } from '../support/launchProgram.ts';

const DRIVE = 'assets/drives/van-before.csv';

let program: Program;
let work = '';
let capture = '';
let captureTime = 0;

beforeAll(async () => {
  work = mkdtempSync(join(tmpdir(), 'tailtrace-unharmed-'));
  capture = join(work, 'van.csv');
  copyFileSync(DRIVE, capture);
  captureTime = statSync(capture).mtimeMs;
  program = await launchProgram({ args: [capture] });
  await program.settled();
});
afterAll(async () => {
  await program.close();
  rmSync(work, { recursive: true, force: true });
});

const records = () => program.page.evaluate(() => window.shell.listVehicles(null));
const pageCount = () => program.app.evaluate(({ webContents }) => webContents.getAllWebContents().length);

describe('T-SAVE-11: a capture is never written to', () => {
  it('after opening, marking and saving it is byte for byte as it was', async () => {
    await program.app.evaluate(({ Menu }) => Menu.getApplicationMenu()?.getMenuItemById('window.acceptAll')?.click());
    await program.settled();
    const [entry] = await records();
    const loaded = await program.page.evaluate((id) => window.shell.loadVehicle({ id }), entry?.id ?? '');
    expect(loaded.ok && Object.keys(loaded.record.windows).length).toBeGreaterThan(0);
    const original = readFileSync(DRIVE);
    const now = readFileSync(capture);
    const hash = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');
    expect(hash(now)).toBe(hash(original));
    expect(statSync(capture)).toMatchObject({ size: original.length, mtimeMs: captureTime });
  });
});

describe('T-OPEN-10: a crash is survived', () => {
  it('of the process that holds the captures: they come back, the record is whole', async () => {
    const pid = await program.app.evaluate(({ app }) => {
      const metrics = app.getAppMetrics().find(({ name }) => name === 'Tailtrace captures');
      return metrics?.pid ?? 0;
    });
    expect(pid).toBeGreaterThan(0);
    await program.page.evaluate(() => {
      const lost = new Promise<void>((resolve) => {
        window.shell.on('coreLost', () => resolve());
      });
      Reflect.set(window, 'coreLostUnderTest', lost);
    });
    process.kill(pid, 'SIGKILL');
    await program.page.evaluate(() => Reflect.get(window, 'coreLostUnderTest'));
    await program.settled();
    expect(await records()).toMatchObject([{ captures: 1 }]);
  });

  it('of the page: the shell lives, offers to load it again, and the record is whole', async () => {
    const before = await records();
    await program.app.evaluate(({ BrowserWindow, dialog }) => {
      Reflect.set(globalThis, 'offers', []);
      dialog.showMessageBox = async (...given: unknown[]) => {
        Reflect.get(globalThis, 'offers').push(Object(given.at(-1)).buttons);
        return { response: 0, checkboxChecked: false };
      };
      BrowserWindow.getAllWindows()[0]?.webContents.forcefullyCrashRenderer();
    });
    // The test's own page object does not survive a crash: the page that was loaded anew is asked through the shell.
    const after = await askNewPage('shell.listVehicles(null)');
    expect(after).toEqual(before.map((entry) => ({ ...entry, savedAt: expect.any(String) })));
    expect(await program.app.evaluate(() => Reflect.get(globalThis, 'offers'))).toEqual([['Load again', 'Quit']]);
  });
});

/** Runs a line in the page of the window once that page has settled. */
function askNewPage(line: string): Promise<unknown> {
  const whenSettled =
    'new Promise((go) => { const look = () => document.documentElement.dataset.settled === "true" ? go() : ' +
    'requestAnimationFrame(look); look(); })';
  return program.app.evaluate(async ({ BrowserWindow }, code) => {
    const contents = BrowserWindow.getAllWindows()[0]?.webContents;
    await new Promise<void>((loaded) => contents?.once('did-finish-load', () => loaded()));
    return contents?.executeJavaScript(code);
  }, `${whenSettled}.then(() => ${line})`);
}

describe('T-LOCK-1: one program owns the records', () => {
  it('of 12 starts at once one stays, and every capture is offered in it', async () => {
    const starts = 12;
    const captures = Array.from({ length: starts }, (_, i) => join(work, `start-${i}.csv`));
    for (const path of captures) copyFileSync(DRIVE, path);
    await program.app.evaluate(({ app }) => {
      const handed: unknown[] = [];
      Reflect.set(globalThis, 'handed', handed);
      app.on('second-instance', (_event, _words, _folder, data) => handed.push(data));
    });
    const runtime = presentRuntime()?.executable ?? '';
    const env = { ...process.env, TAILTRACE_DATA_DIR: program.dataFolder };
    const ended = captures.map((path) => promisify(execFile)(runtime, electronArguments([path]), { env }));
    await Promise.all(ended); // each ends by itself, with status 0
    const handed = await program.app.evaluate(() => Reflect.get(globalThis, 'handed'));
    expect(handed.flatMap((data: { captures: string[] }) => data.captures).sort()).toEqual([...captures].sort());
    expect(await pageCount()).toBe(1);
  });
});

describe('the end of the program', () => {
  it('a page that has stopped answering does not keep the program from ending', async () => {
    const stuck = await launchProgram({ args: [capture] });
    await stuck.settled();
    await stuck.app.evaluate(({ BrowserWindow }) => {
      void BrowserWindow.getAllWindows()[0]?.webContents.executeJavaScript('for (;;) {}');
    });
    await stuck.close(); // fails by itself where the process does not end
  });
});
