import { registry } from '../../registry.ts';
import { csv } from './csv.ts';
import { html } from './html.ts';
import { json } from './json.ts';
import { markdown } from './markdown.ts';
import type { SheetFormat } from './sheetFormat.ts';

/** Every way to write a sheet. PDF is the shell's: it prints the HTML. */
export const SHEET_FORMATS: readonly SheetFormat[] = registry('sheet format', (format) => format.id, [
  html,
  csv,
  json,
  markdown,
]);

/** The format of a file ending without its dot, or null. */
export function sheetFormat(ending: string): SheetFormat | null {
  return SHEET_FORMATS.find(({ id }) => id === ending.toLowerCase()) ?? null;
}
