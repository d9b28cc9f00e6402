// The evidence sheet as a document: sections of paragraphs, facts, tables and pictures, without a word on how they look.
// buildSheet.ts makes it, formats/ write it. Texts are kept as they are; each format makes them safe in its own way.

/** A value in a table or beside a fact. */
export type Cell =
  | { readonly kind: 'text'; readonly text: string }
  | {
      readonly kind: 'number';
      /** The number itself, in `unit`. */
      readonly value: number;
      /** As people read it, with as many digits as it deserves, without its unit. */
      readonly shown: string;
      /** Unit to write beside it; null for a pure number and where the head of the column has it. */
      readonly unit: string | null;
    }
  /** Why there is no value: "not recorded", "cannot tell", "left out of this copy". Never an empty cell. */
  | { readonly kind: 'none'; readonly words: string };

export interface Column {
  readonly id: string;
  /** Head of the column, without its unit. */
  readonly words: string;
  /** Unit of every number in it, or null. */
  readonly unit: string | null;
  readonly align: 'left' | 'right';
}

export interface Fact {
  readonly id: string;
  readonly words: string;
  readonly value: Cell;
}

export type Block =
  | { readonly kind: 'paragraph'; readonly tone: 'plain' | 'lead' | 'caution' | 'small'; readonly text: string }
  /** Level 3 stands under the section's title, 4 under the level 3 before it. */
  | { readonly kind: 'subheading'; readonly level: 3 | 4; readonly text: string }
  | { readonly kind: 'list'; readonly items: readonly string[] }
  | { readonly kind: 'facts'; readonly id: string; readonly facts: readonly Fact[] }
  | {
      readonly kind: 'table';
      readonly id: string;
      readonly caption: string;
      readonly columns: readonly Column[];
      /** As many cells as columns in each. */
      readonly rows: readonly (readonly Cell[])[];
      /** Rows so short that a page has room for two halves of the table side by side. */
      readonly narrow?: true;
    }
  | { readonly kind: 'figure'; readonly caption: string; readonly alternative: string; readonly svg: string }
  /** Lines to be filled in by hand, on paper. */
  | { readonly kind: 'blanks'; readonly id: string; readonly lines: readonly string[] };

export interface Section {
  readonly id: string;
  readonly title: string;
  readonly blocks: readonly Block[];
}

export type DecimalSign = '.' | ',';

export interface Sheet {
  /** "Evidence sheet: Van 14". */
  readonly title: string;
  /** What stands at the foot of every page: vehicle, day, first digits of the hash where there is one. */
  readonly foot: string;
  readonly language: 'en';
  readonly paper: 'A4' | 'Letter';
  readonly decimalSign: DecimalSign;
  /** RFC 3339. */
  readonly madeAt: string;
  readonly coreVersion: string;
  readonly sections: readonly Section[];
}
