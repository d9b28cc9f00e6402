import type { Sheet } from '../sheet.ts';

/** A way to write a sheet: one file in this folder, one line in its index. */
export interface SheetFormat {
  /** Also the ending of its file names. */
  readonly id: 'html' | 'csv' | 'json' | 'md';
  /** For people who choose one. */
  readonly words: string;
  readonly mediaType: string;
  /** The whole file as text. Pure; never throws for any sheet, whatever a stranger's names hold. */
  write(sheet: Sheet): string;
}
