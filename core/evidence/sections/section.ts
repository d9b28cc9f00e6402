import type { Section } from '../sheet.ts';
import type { SheetInput } from '../sheetInput.ts';

/** What a section of the sheet is: one file in this folder, one line in its index. */
export interface SectionMaker {
  readonly id: string;
  /** The section, or null where it has nothing to say about this vehicle. Pure. */
  build(input: SheetInput): Section | null;
}
