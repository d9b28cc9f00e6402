import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { dialog } from 'electron';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { type ExportWish, exportFile } from '../../../../main/exports/exportFile.ts';
import { placesFile } from '../../../../main/program/places.ts';
import { systemFiles } from '../../../../main/store/fileLayer.ts';

vi.mock('electron', () => ({ dialog: { showSaveDialog: vi.fn() } }));

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'tailtrace-export-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** Answers the next dialog as a person would; gives back what the dialog was asked with. */
function answer(filePath: string | null) {
  const show = vi.mocked(dialog.showSaveDialog);
  show.mockReset();
  show.mockResolvedValue({ canceled: filePath === null, filePath: filePath ?? '' });
  return show;
}

function run(wish: Partial<ExportWish> = {}, files = systemFiles) {
  const tools = {
    files,
    places: placesFile(systemFiles, join(folder, 'places.json')),
    window: () => null,
    documents: () => '/home/reader/Documents',
  };
  return exportFile(tools, {
    suggestedName: 'Van 14, evidence.html',
    kind: 'html',
    content: async () => ({ ok: true, value: Buffer.from('new') }),
    ...wish,
  });
}

describe('G6: exports', () => {
  it('ask where to, with a clean name and the question before anything is replaced', async () => {
    const show = answer(null);
    expect(await run({ suggestedName: '../Van: 14.html' })).toBeNull();
    expect(show.mock.calls[0]?.at(-1)).toMatchObject({
      defaultPath: '/home/reader/Documents/Van 14.html',
      properties: expect.arrayContaining(['showOverwriteConfirmation']),
    });
  });

  it('make nothing that nobody wanted', async () => {
    answer(null);
    const content = vi.fn<ExportWish['content']>();
    await run({ content });
    expect(content).not.toHaveBeenCalled();
  });

  it('write what was made, and begin in the same folder the next time', async () => {
    const path = join(folder, 'sheet.html');
    answer(path);
    expect(await run()).toEqual({ path, name: 'sheet.html', problem: null });
    expect(readFileSync(path, 'utf8')).toBe('new');
    const show = answer(null);
    await run();
    expect(show.mock.calls[0]?.at(-1)).toMatchObject({ defaultPath: join(folder, 'Van 14, evidence.html') });
  });

  it('replace a file whose replacement the dialog has asked about', async () => {
    const path = join(folder, 'sheet.html');
    writeFileSync(path, 'old');
    answer(path);
    await run();
    expect(readFileSync(path, 'utf8')).toBe('new');
  });

  it('never replace in silence: a name that gets its extension here takes a free one', async () => {
    writeFileSync(join(folder, 'sheet.html'), 'old');
    answer(join(folder, 'sheet'));
    expect(await run()).toMatchObject({ name: 'sheet (2).html', problem: null });
    expect(readFileSync(join(folder, 'sheet.html'), 'utf8')).toBe('old');
    expect(readFileSync(join(folder, 'sheet (2).html'), 'utf8')).toBe('new');
  });

  it('on a full disk leave the old file, say why, and leave nothing behind', async () => {
    const path = join(folder, 'sheet.html');
    writeFileSync(path, 'old');
    answer(path);
    const full = { ...systemFiles, create: () => Promise.reject(Object.assign(new Error('full'), { code: 'ENOSPC' })) };
    // A record is saved again by itself; an export is not.
    expect(await run({}, full)).toMatchObject({
      problem: { id: 'notWritten.ENOSPC', where: 'sheet.html', doNext: 'Make room on it, then try again.' },
    });
    expect(readFileSync(path, 'utf8')).toBe('old');
    expect(readdirSync(folder)).toEqual(['sheet.html']);
  });

  it('a sheet that cannot be made leaves the old file too', async () => {
    const path = join(folder, 'sheet.pdf');
    writeFileSync(path, 'old');
    answer(path);
    const problem = { id: 'notMade', what: 'No pages.', where: 'the PDF document', doNext: 'Export a web page.' };
    const content = async () => ({ ok: false, problem }) as const;
    expect(await run({ kind: 'pdf', content })).toEqual({ path, name: 'sheet.pdf', problem });
    expect(readFileSync(path, 'utf8')).toBe('old');
  });
});
