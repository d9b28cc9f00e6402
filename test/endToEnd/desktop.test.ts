// What a program of this desktop does by habit: titles, recent captures, the window's place, menus, exports, the
// clipboard. In the real program, over a restart.

import { copyFileSync, existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import '../../renderer/shell/shell.ts'; // what window.shell is
import { launchProgram, makeDataFolder, type Program } from '../support/launchProgram.ts';

let work = '';
let dataFolder = '';
let program: Program | null = null;

beforeAll(async () => {
  work = mkdtempSync(join(tmpdir(), 'tailtrace-desktop-'));
  dataFolder = await makeDataFolder();
  for (const name of ['van-before', 'van-after']) copyFileSync(`assets/drives/${name}.csv`, join(work, `${name}.csv`));
});
afterEach(async () => {
  await program?.close();
  program = null;
});
afterAll(() => {
  for (const folder of [work, dataFolder]) rmSync(folder, { recursive: true, force: true });
});

/** Starts the program anew on the same data, with captures by their short names. */
async function start(...captures: string[]): Promise<Program> {
  program = await launchProgram({ args: captures.map((name) => join(work, `${name}.csv`)), dataFolder });
  await program.settled();
  return program;
}

/** Presses an entry of the menu bar as the hand would. */
const press = ({ app }: Program, id: string) =>
  app.evaluate(({ Menu }, item) => Menu.getApplicationMenu()?.getMenuItemById(item)?.click(), id);

const recentInMenu = ({ app }: Program): Promise<string[]> =>
  app.evaluate(({ Menu }) => {
    const items = Menu.getApplicationMenu()?.getMenuItemById('recent')?.submenu?.items ?? [];
    return items.map(({ label }) => label);
  });

describe('C5, C6, C8: captures by name', () => {
  it('a capture given at the start is opened, named in the title, and remembered', async () => {
    const now = await start('van-before');
    const title = await now.app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.getTitle());
    expect(title).toMatch(/van-before.*Tailtrace$/);
    expect(await recentInMenu(now)).toEqual(['van-before.csv']);
    expect(now.errors).toEqual([]);
  });

  it('after a restart the last vehicle is open again, and the list is still there; a vanished capture says so', async () => {
    rmSync(join(work, 'van-before.csv'));
    const now = await start();
    expect(await recentInMenu(now)).toEqual(['van-before.csv (moved away)']);
    const { captures, lastVehicle } = await now.page.evaluate(() => window.shell.recent(null));
    expect(captures).toMatchObject([{ name: 'van-before.csv', there: false, sample: false }]);
    expect(lastVehicle).not.toBeNull();
    expect(JSON.stringify(captures)).not.toContain(work);
  });

  it('the list is cleared in one action', async () => {
    const now = await start();
    await press(now, 'file.clearRecent');
    await now.page.waitForFunction(async () => (await window.shell.recent(null)).captures.length === 0);
    expect(await recentInMenu(now)).toEqual([]);
    expect(readFileSync(join(dataFolder, 'places.json'), 'utf8')).toContain('"recent": []');
  });
});

describe('C9: the window comes back', () => {
  it('where and as large as it was left', async () => {
    const wanted = { x: 140, y: 90, width: 1111, height: 777 };
    const first = await start();
    await first.app.evaluate(
      ({ BrowserWindow }, bounds) => BrowserWindow.getAllWindows()[0]?.setBounds(bounds),
      wanted,
    );
    await first.close();
    const second = await start();
    const there = await second.app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.getBounds());
    expect(there).toEqual(wanted);
  });

  it('with the settings that were chosen', async () => {
    const first = await start();
    await first.page.evaluate(async () => {
      const { shell } = window;
      await shell.saveSettings({
        ...(await shell.settings(null)),
        theme: 'dark',
        temperatureUnit: 'F',
        reader: 'R. Eader',
      });
    });
    await first.close();
    const second = await start();
    const settings = await second.page.evaluate(() => window.shell.settings(null));
    expect(settings).toMatchObject({ theme: 'dark', temperatureUnit: 'F', reader: 'R. Eader' });
    expect(await second.app.evaluate(({ nativeTheme }) => nativeTheme.shouldUseDarkColors)).toBe(true);
  });
});

describe('C10, G6: what is handed out', () => {
  it('text and a picture go to the clipboard', async () => {
    const now = await start();
    await now.page.evaluate(() => window.shell.copyText({ text: 'Time, s\tFront, V\n61.2\t0.45' }));
    expect(await now.app.evaluate(({ clipboard }) => clipboard.readText())).toBe('Time, s\tFront, V\n61.2\t0.45');
    const png = [...readFileSync('assets/icon.png')];
    await now.page.evaluate((bytes) => window.shell.copyPicture({ png: Uint8Array.from(bytes) }), png);
    const types = await now.app.evaluate(async ({ clipboard }) => {
      const formats: unknown = Reflect.get(clipboard, 'availableFormats');
      if (typeof formats === 'function') return formats.call(clipboard);
      return (await clipboard.read()).flatMap((item) => item.types);
    });
    expect(types).toContain('image/png');
  });

  it('a sheet is written as web page and as PDF where the dialog says, with a way to find it', async () => {
    const now = await start();
    const html =
      '<!doctype html><html lang="en"><title>Van 14</title><h1>Evidence</h1><script>document.title="x"</script>';
    await now.answerSaveDialogs(join(work, 'sheet.html'));
    expect(
      await now.page.evaluate(
        (content) => window.shell.exportFile({ suggestedName: 'a', kind: 'html', content }),
        html,
      ),
    ).toEqual({ name: 'sheet.html', problem: null });
    expect(readFileSync(join(work, 'sheet.html'), 'utf8')).toBe(html);

    await now.answerSaveDialogs(join(work, 'sheet.pdf'));
    expect(
      await now.page.evaluate(
        (sheet) => window.shell.exportPdf({ suggestedName: 'a', html: sheet, paper: 'A4' }),
        html,
      ),
    ).toEqual({ name: 'sheet.pdf', problem: null });
    expect(readFileSync(join(work, 'sheet.pdf'), 'latin1')).toMatch(/^%PDF-1\.\d/);

    await now.app.evaluate(({ shell }) => {
      const shown: string[] = [];
      Reflect.set(globalThis, 'shown', shown);
      shell.showItemInFolder = (path) => void shown.push(path);
    });
    await now.page.evaluate(() => window.shell.showExport(null));
    expect(await now.app.evaluate(() => Reflect.get(globalThis, 'shown'))).toEqual([join(work, 'sheet.pdf')]);
  });

  it('a cancelled dialog writes nothing, and a folder that is gone is a sentence', async () => {
    const now = await start();
    await now.answerSaveDialogs(null);
    const ask = () => window.shell.exportFile({ suggestedName: 'a', kind: 'csv', content: 'x' });
    expect(await now.page.evaluate(ask)).toBeNull();
    await now.answerSaveDialogs(join(work, 'gone', 'notes.csv'));
    expect(await now.page.evaluate(ask)).toMatchObject({
      name: 'notes.csv',
      problem: { id: 'notWritten.ENOENT', where: 'notes.csv' },
    });
    expect(existsSync(join(work, 'gone'))).toBe(false);
  });
});

describe('T-EL-16: the runtime', () => {
  it('names itself, and says so where it is only a stand-in', async () => {
    const now = await start();
    const about = await now.page.evaluate(() => window.shell.about(null));
    const pinned: string = JSON.parse(readFileSync('package.json', 'utf8')).devDependencies.electron;
    const major = Number(/^Electron (\d+)\./.exec(about.runtime)?.[1]);
    expect(about.fallbackRuntime).toBe(major < Number(pinned.split('.')[0]));
    expect(about.licences.map(({ name }) => name)).toContain('uplot');
  });
});
