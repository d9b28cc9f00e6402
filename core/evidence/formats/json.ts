// The sheet as JSON for other programs: the same sections, tables as rows of named values. Numbers are finite or null.

import type { Block, Cell, Column, Sheet } from '../sheet.ts';
import type { SheetFormat } from './sheetFormat.ts';

export const json: SheetFormat = {
  id: 'json',
  words: 'Data for other programs',
  mediaType: 'application/json',
  write(sheet) {
    return `${JSON.stringify(plain(sheet), null, 2)}\n`;
  },
};

function plain({ title, madeAt, coreVersion, language, sections }: Sheet) {
  return {
    format: 'tailtrace-sheet',
    version: 1,
    title,
    madeAt,
    coreVersion,
    language,
    sections: sections.map((section) => ({
      id: section.id,
      title: section.title,
      blocks: section.blocks.flatMap((block) => plainBlock(block) ?? []),
    })),
  };
}

function plainBlock(block: Block) {
  switch (block.kind) {
    case 'paragraph':
      return { kind: 'text', text: block.text };
    case 'subheading':
      return { kind: 'heading', level: block.level, text: block.text };
    case 'list':
      return { kind: 'list', items: block.items };
    case 'facts':
      return {
        kind: 'facts',
        id: block.id,
        facts: block.facts.map(({ id, words, value }) => ({ id, words, ...plainCell(value, null) })),
      };
    case 'table':
      return {
        kind: 'table',
        id: block.id,
        caption: block.caption,
        columns: block.columns.map(({ id, words, unit }) => ({ id, words, unit })),
        rows: block.rows.map((row) => Object.fromEntries(row.map((cell, i) => namedCell(cell, block.columns[i])))),
      };
    case 'figure':
      return { kind: 'picture', caption: block.caption, alternative: block.alternative };
    case 'blanks':
      return null;
  }
}

function namedCell(cell: Cell, column: Column | undefined): [string, unknown] {
  return [column?.id ?? '', plainCell(cell, column?.unit ?? null)];
}

function plainCell(cell: Cell, unit: string | null) {
  if (cell.kind === 'number') return { value: cell.value, unit: cell.unit ?? unit ?? '1' };
  if (cell.kind === 'text') return { value: cell.text };
  return { value: null, why: cell.words };
}
