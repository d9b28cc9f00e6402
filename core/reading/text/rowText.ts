// Rows as text, for those that the row loop does not understand.

import Papa from 'papaparse';
import type { Dialect } from './dialect.ts';

/** True where a row holds signs that no text shows and nothing else: page breaks, the end mark of old systems, zeros. */
export function isHollow(bytes: Uint8Array, start: number, end: number): boolean {
  let signs = 0;
  for (let i = start; i < end; i++) {
    const c = bytes[i] ?? 0;
    if (c > 32) return false;
    if (c < 32 && c !== 9) signs++;
  }
  return signs > 0;
}

/** A cell without the quotes around it. */
export function unquoted(text: string): string {
  const cell = text.trim();
  return cell.length >= 2 && cell.startsWith('"') && cell.endsWith('"')
    ? cell.slice(1, -1).replaceAll('""', '"')
    : text;
}

/** A row as cells, quotes undone. */
export function splitQuoted(text: string, { delimiter }: Dialect): string[] {
  if (delimiter === ' ')
    return text
      .replaceAll('"', ' ')
      .trim()
      .split(/[ \t]+/);
  return Papa.parse<string[]>(text, { delimiter, newline: '\n' }).data[0] ?? [];
}
