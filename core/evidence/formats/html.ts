// The sheet as a web page that stands alone: no script, no request, nothing from outside. Its own policy says so, and
// prints say the same as the screen.

import type { Block, Cell, Column, Section, Sheet } from '../sheet.ts';
import { KEPT_SPACE } from '../words/numbers.ts';
import { instantWords } from '../words/quantities.ts';
import { documentOf, element, escapeText, joined, type Markup, styleSheet } from './markup.ts';
import type { SheetFormat } from './sheetFormat.ts';
import { sheetStyle } from './sheetStyle.ts';

/** Nothing may load but the page's own style and the pictures it carries inside itself (T-INJ-2). */
export const SHEET_POLICY =
  "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'";

/** Sections that begin a page of their own: the form filled in by hand, and the details behind everything else. */
const OWN_PAGE = new Set(['papers', 'windowDetails']);
/** Sections that stay on one page: the lines for the second reader's hand. */
const WHOLE = new Set(['secondReader']);

export const html: SheetFormat = {
  id: 'html',
  words: 'Web page',
  mediaType: 'text/html',
  write(sheet) {
    return documentOf('<!doctype html>', element('html', { lang: sheet.language }, head(sheet), body(sheet)));
  },
};

function head(sheet: Sheet): Markup {
  return element(
    'head',
    {},
    element('meta', { charset: 'utf-8' }),
    element('meta', { 'http-equiv': 'Content-Security-Policy', content: SHEET_POLICY }),
    element('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
    element('meta', { name: 'referrer', content: 'no-referrer' }),
    element('title', {}, escapeText(sheet.foot)),
    styleSheet(sheetStyle(sheet.paper)),
  );
}

function body(sheet: Sheet): Markup {
  const made = `Made ${instantWords(sheet.madeAt)} with Tailtrace ${sheet.coreVersion}`;
  return element(
    'body',
    {},
    element(
      'header',
      {},
      element('h1', {}, escapeText(sheet.title)),
      element('div', { class: 'made' }, escapeText(made)),
    ),
    element('main', {}, sheet.sections.map(sectionMarkup)),
    element('footer', {}, escapeText(sheet.foot)),
  );
}

function sectionMarkup({ id, title, blocks }: Section): Markup {
  return element(
    'section',
    { id, class: OWN_PAGE.has(id) ? 'own-page' : WHOLE.has(id) ? 'whole' : null },
    element('h2', {}, escapeText(title)),
    blocks.map(blockMarkup),
  );
}

function blockMarkup(block: Block): Markup {
  switch (block.kind) {
    case 'paragraph':
      return element('p', { class: block.tone === 'plain' ? null : block.tone }, escapeText(block.text));
    case 'subheading':
      return element(`h${block.level}`, {}, escapeText(block.text));
    case 'list':
      return element(
        'ul',
        {},
        block.items.map((item) => element('li', {}, escapeText(item))),
      );
    case 'facts':
      return element(
        'dl',
        {},
        block.facts.map(({ words, value }) =>
          element('div', {}, element('dt', {}, escapeText(words)), factMarkup(value)),
        ),
      );
    case 'table':
      return tableMarkup(block);
    case 'figure':
      return figureMarkup(block);
    case 'blanks':
      return joined(block.lines.map((line) => element('div', { class: 'blank' }, escapeText(line))));
  }
}

const IS_HASH = /^[0-9a-f]{64}$/;

function factMarkup(value: Cell): Markup {
  const words = escapeText(cellWords(value));
  const inside = value.kind === 'text' && IS_HASH.test(value.text) ? element('code', {}, words) : words;
  return element('dd', { class: value.kind === 'none' ? 'none' : null }, inside);
}

/** A cell as people read it, with its unit where it carries one. */
export function cellWords(cell: Cell): string {
  if (cell.kind === 'text') return cell.text;
  if (cell.kind === 'none') return cell.words;
  return cell.unit === null ? cell.shown : `${cell.shown}${KEPT_SPACE}${cell.unit}`;
}

/** "Rise, K": a head says quantity and unit; a pure number has none. */
export function columnWords({ words, unit }: Column): string {
  return unit === null || unit === '1' ? words : `${words}, ${unit}`;
}

/** Fewer rows than this are no gain side by side. */
const BESIDE_FROM = 6;

function tableMarkup(block: Extract<Block, { kind: 'table' }>): Markup {
  const { caption, rows, narrow } = block;
  if (narrow !== true || rows.length < BESIDE_FROM) return oneTable(block, element('caption', {}, escapeText(caption)));
  const half = Math.ceil(rows.length / 2);
  return element(
    'div',
    { class: 'beside' },
    element('p', { class: 'caption' }, escapeText(caption)),
    oneTable({ ...block, rows: rows.slice(0, half) }, null),
    oneTable({ ...block, rows: rows.slice(half) }, null),
  );
}

function oneTable({ caption, columns, rows }: Extract<Block, { kind: 'table' }>, head: Markup | null): Markup {
  const heads = columns.map((column) =>
    element('th', { scope: 'col', class: column.align === 'right' ? 'number' : null }, escapeText(columnWords(column))),
  );
  return element(
    'table',
    { 'aria-label': head === null ? caption : null },
    head ?? [],
    element('thead', {}, element('tr', {}, heads)),
    element(
      'tbody',
      {},
      rows.map((row) =>
        element(
          'tr',
          {},
          row.map((cell, i) => cellMarkup(cell, columns[i], i)),
        ),
      ),
    ),
  );
}

/** Columns of the program's own short words, which never break inside; a stranger's names may break anywhere. */
const OWN_WORDS = new Set(['bank', 'unit', 'status', 'code', 'origin', 'finding', 'for', 'side', 'takenAt', 'role']);

function cellMarkup(cell: Cell, column: Column | undefined, place: number): Markup {
  const none = cell.kind === 'none' ? 'none' : null;
  const own = column?.id === 'state' ? 'state' : OWN_WORDS.has(column?.id ?? '') ? 'own' : null;
  const words = cellWords(cell);
  const classes = [column?.align === 'right' ? 'number' : null, none, own].filter((name) => name !== null).join(' ');
  const attributes = { class: classes === '' ? null : classes };
  if (place === 0) return element('th', { scope: 'row', ...attributes }, escapeText(words));
  return element('td', attributes, escapeText(words));
}

/** The picture as an image of its own: what is inside an image can neither run nor reach out. */
function figureMarkup({ caption, alternative, svg }: Extract<Block, { kind: 'figure' }>): Markup {
  const address = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(wellFormed(svg))}`;
  return element(
    'figure',
    {},
    element('img', { src: address, alt: alternative }),
    element('figcaption', {}, escapeText(caption)),
  );
}

/** Half surrogate pairs, which cannot be encoded, as the replacement character. */
function wellFormed(text: string): string {
  return text.replace(/\p{Surrogate}/gu, '\ufffd');
}
