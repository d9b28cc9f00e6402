// The sheet as Markdown: CommonMark with the usual tables, for mails and records that take text.

import type { Block, Cell } from '../sheet.ts';
import { instantWords } from '../words/quantities.ts';
import { cellWords, columnWords } from './html.ts';
import { markdownText } from './markdownText.ts';
import type { SheetFormat } from './sheetFormat.ts';

export const markdown: SheetFormat = {
  id: 'md',
  words: 'Text with marks',
  mediaType: 'text/markdown',
  write(sheet) {
    const made = `Made ${instantWords(sheet.madeAt)} with Tailtrace ${sheet.coreVersion}`;
    const parts = [
      `# ${markdownText(sheet.title)}`,
      markdownText(made),
      ...sheet.sections.flatMap(({ title, blocks }) => [`## ${markdownText(title)}`, ...blocks.flatMap(blockText)]),
    ];
    return `${parts.join('\n\n')}\n`;
  },
};

function blockText(block: Block): string[] {
  switch (block.kind) {
    case 'paragraph':
      return [
        block.tone === 'lead' || block.tone === 'caution'
          ? `**${markdownText(block.text)}**`
          : markdownText(block.text),
      ];
    case 'subheading':
      return [`${'#'.repeat(block.level)} ${markdownText(block.text)}`];
    case 'list':
      return [block.items.map((item) => `- ${markdownText(item)}`).join('\n')];
    case 'facts':
      return [block.facts.map(({ words, value }) => `- ${markdownText(words)}: ${markdownCell(value)}`).join('\n')];
    case 'table':
      return tableText(block);
    case 'figure':
      return [`${markdownText(block.caption)}: ${markdownText(block.alternative)}`];
    case 'blanks':
      return [
        block.lines
          .filter((line) => line !== '')
          .map((line) => `- ${markdownText(line)}: \\_\\_\\_\\_`)
          .join('\n'),
      ];
  }
}

function tableText({ caption, columns, rows }: Extract<Block, { kind: 'table' }>): string[] {
  const head = columns.map((column) => markdownText(columnWords(column)));
  const rule = columns.map(({ align }) => (align === 'right' ? '---:' : '---'));
  const body = rows.map((row) => row.map(markdownCell));
  const lines = [head, rule, ...body].map((cells) => `| ${cells.join(' | ')} |`);
  return [`*${markdownText(caption)}*`, lines.join('\n')];
}

function markdownCell(cell: Cell): string {
  return cell.kind === 'none' ? `*${markdownText(cell.words)}*` : markdownText(cellWords(cell));
}
