// The sheet as one long table, one value a row: section, what it is about, which quantity, the number, its unit, and the
// words. One head row, so that any program can sort and filter it (RFC 4180).

import type { Block, Cell, Column, Section, Sheet } from '../sheet.ts';
import { type CsvValue, csvText, UTF8_MARK } from './csvCells.ts';
import { cellWords } from './html.ts';
import type { SheetFormat } from './sheetFormat.ts';

export const CSV_HEAD = ['section', 'part', 'subject', 'quantity', 'value', 'unit', 'words'] as const;

export const csv: SheetFormat = {
  id: 'csv',
  words: 'Table for a spreadsheet',
  mediaType: 'text/csv',
  write(sheet) {
    return UTF8_MARK + csvText([CSV_HEAD, ...about(sheet), ...sheet.sections.flatMap(sectionRows)], sheet.decimalSign);
  },
};

function about(sheet: Sheet): CsvValue[][] {
  const row = (quantity: string, words: string): CsvValue[] => ['sheet', '', '', quantity, null, '', words];
  return [
    row('title', sheet.title),
    row('made', sheet.madeAt),
    row('core version', sheet.coreVersion),
    row('decimal sign of this file', sheet.decimalSign === ',' ? 'comma' : 'point'),
  ];
}

function sectionRows(section: Section): CsvValue[][] {
  let upper = '';
  let part = '';
  return section.blocks.flatMap((block) => {
    if (block.kind === 'subheading') {
      if (block.level === 3) upper = block.text;
      part = block.level === 3 || upper === '' ? block.text : `${upper}: ${block.text}`;
    }
    return blockRows(block).map((row) => [section.id, part, ...row]);
  });
}

/** Subject, quantity, value, unit, words. */
function blockRows(block: Block): CsvValue[][] {
  switch (block.kind) {
    case 'paragraph':
      return [['', 'text', null, '', block.text]];
    case 'list':
      return block.items.map((item) => ['', 'text', null, '', item]);
    case 'facts':
      return block.facts.map(({ words, value }) => ['', words, ...valueAndWords(value, null)]);
    case 'table':
      return block.rows.flatMap((row) => tableRows(row, block.columns));
    case 'figure':
      return [['', 'picture', null, '', block.alternative]];
    case 'blanks':
    case 'subheading':
      return [];
  }
}

/** A row for each cell but the first, which is what the others are about. */
function tableRows(cells: readonly Cell[], columns: readonly Column[]): CsvValue[][] {
  const [first, ...rest] = cells;
  const subject = first === undefined ? '' : cellWords(first);
  const unit = cells[columns.findIndex(({ id }) => id === 'unit')];
  const unitOfRow = unit?.kind === 'text' ? unit.text : null;
  return rest.flatMap((cell, i) => {
    const column = columns[i + 1];
    if (column === undefined || column.id === 'unit') return [];
    return [[subject, column.words, ...valueAndWords(cell, column.unit ?? unitOfRow)]];
  });
}

function valueAndWords(cell: Cell, unit: string | null): CsvValue[] {
  if (cell.kind === 'number') return [cell.value, cell.unit ?? unit ?? '1', ''];
  return [null, '', cellWords(cell)];
}
