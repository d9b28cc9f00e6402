import { basename, dirname, extname, join } from 'node:path';
import { type BrowserWindow, dialog } from 'electron';
import type { Outcome, Problem } from '../../core/reading/problem.ts';
import type { Places } from '../program/places.ts';
import { atomicWrite } from '../store/atomicWrite.ts';
import { type FileLayer, faultCode } from '../store/fileLayer.ts';
import { writeProblem } from '../store/fileProblem.ts';
import type { KeptFile } from '../store/keptFile.ts';
import { cleanFileName } from './cleanFileName.ts';

/** Also the extension of its files. */
export type ExportKind = 'html' | 'pdf' | 'csv' | 'json' | 'md' | 'png' | 'svg' | 'tailtrace-bundle';

const KIND_WORDS: Readonly<Record<ExportKind, string>> = {
  html: 'Web page',
  pdf: 'PDF document',
  csv: 'Table, comma separated',
  json: 'JSON document',
  md: 'Markdown text',
  png: 'Picture',
  svg: 'Drawing',
  'tailtrace-bundle': 'Bundle for a second reader',
};

export interface ExportTools {
  readonly files: FileLayer;
  readonly places: KeptFile<Places>;
  window(): BrowserWindow | null;
  documents(): string;
}

export interface ExportWish {
  readonly suggestedName: string;
  readonly kind: ExportKind;
  /** Made after the person has said where to: a cancelled dialog costs nothing. */
  content(): Promise<Outcome<Uint8Array>>;
}

/** Where an export went, or why it did not. `path` is for the shell alone. */
export interface Exported {
  readonly path: string;
  readonly name: string;
  readonly problem: Problem | null;
}

/** Asks where to and writes there; null where the person cancelled. An existing file is replaced only when they said so. */
export async function exportFile(
  tools: ExportTools,
  { suggestedName, kind, content }: ExportWish,
): Promise<Exported | null> {
  const { folders } = await tools.places.read();
  const folder = folders.exports ?? tools.documents();
  const wish = {
    title: `Export: ${KIND_WORDS[kind]}`,
    defaultPath: join(folder, withExtension(cleanFileName(suggestedName), kind)),
    filters: [{ name: KIND_WORDS[kind], extensions: [kind] }],
    // The systems of Windows and macOS ask by themselves before a file is replaced.
    properties: ['showOverwriteConfirmation' as const, 'createDirectory' as const],
  };
  const window = tools.window();
  const { canceled, filePath } = await (window === null
    ? dialog.showSaveDialog(wish)
    : dialog.showSaveDialog(window, wish));
  if (canceled || filePath === undefined || filePath === '') return null;
  const path = await finalPath(tools.files, filePath, kind);
  const name = basename(path);
  const made = await content();
  if (!made.ok) return { path, name, problem: made.problem };
  try {
    await atomicWrite(tools.files, path, made.value, { mode: 0o666 });
  } catch (fault) {
    return { path, name, problem: writeProblem(fault, name) };
  }
  await tools.places.change((now) => ({ ...now, folders: { ...now.folders, exports: dirname(path) } })).catch(() => {});
  return { path, name, problem: null };
}

/** A name without its extension gets it; the person was then not asked about that file, so a free name is found. */
async function finalPath(files: FileLayer, chosen: string, kind: ExportKind): Promise<string> {
  if (extname(chosen).toLowerCase() === `.${kind}`) return chosen;
  for (let count = 1; ; count++) {
    const path = `${chosen}${count === 1 ? '' : ` (${count})`}.${kind}`;
    const there = await files.stat(path).then(
      () => true,
      (fault) => faultCode(fault) !== 'ENOENT',
    );
    if (!there || count === 1000) return path;
  }
}

function withExtension(name: string, kind: ExportKind): string {
  return extname(name).toLowerCase() === `.${kind}` ? name : cleanFileName(`${name}.${kind}`);
}
