// Finds how the cells of a text are divided: tries each delimiter with each decimal sign on the head of the file, and
// keeps the one under which the rows look most like rows of measurements.

import Papa from 'papaparse';
import { type CellKind, cellKind } from './cellKind.ts';
import type { DecimalSign } from './parseNumber.ts';

/** ' ' means runs of blanks and tabs. */
export type Delimiter = ',' | ';' | '\t' | '|' | ' ';

export interface Dialect {
  readonly delimiter: Delimiter;
  readonly decimal: DecimalSign;
}

/** A dialect with the head cut into cells under it, and what was found there. */
export interface DialectFound {
  readonly dialect: Dialect;
  readonly rows: readonly (readonly string[])[];
  /** Number of columns of the rows of data. */
  readonly width: number;
  /** For each row whether it is one of data. */
  readonly isData: readonly boolean[];
  /** Rows of data that agree in width, weighed by how much of them is numbers; 0 where there is none. */
  readonly score: number;
}

const DELIMITERS: readonly Delimiter[] = [',', ';', '\t', '|', ' '];
/** Rows of the head that are looked at; free text before the header may take some of them. */
const MOST_ROWS = 200;
const MOST_COLUMNS_JUDGED = 400;

/** The best dialect for a text's head. With a delimiter told by the file ("sep=;"), only that one is tried. */
export function findDialect(head: string): DialectFound {
  const told = /^\uFEFF?"?sep=(.)"?\r?\n/i.exec(head)?.[1];
  let best: DialectFound | null = null;
  for (const delimiter of DELIMITERS) {
    if (told !== undefined && told !== delimiter && DELIMITERS.some((one) => one === told)) continue;
    if (delimiter !== ' ' && !head.includes(delimiter) && best !== null) continue;
    const rows = splitRows(head, delimiter);
    for (const decimal of ['.', ','] as const) {
      if (decimal === ',' && delimiter === ',' && !head.includes('"')) continue;
      const found = judge(rows, { delimiter, decimal });
      if (best === null || found.score > best.score + 1e-9) best = found;
    }
  }
  if (best !== null && best.dialect.delimiter === ',' && best.width === 2 && isOneColumn(head))
    return judge(splitRows(head, ';'), { delimiter: ';', decimal: ',' });
  return best ?? judge([], { delimiter: ',', decimal: '.' });
}

/**
 * A single column of decimal commas, which looks like two of whole numbers: no heading has two cells, and the digits
 * behind some comma begin with a zero, as those of a whole number do not.
 */
function isOneColumn(head: string): boolean {
  const lines = head.split('\n').filter((line) => line.trim() !== '');
  const numbers = lines.filter((line) => /^[+-]?\d*,\d+$/.test(line.trim()));
  const words = lines.filter((line) => /[a-z]/i.test(line));
  if (numbers.length < 3 || numbers.length + words.length < lines.length) return false;
  return words.every((line) => !line.includes(',')) && numbers.some((line) => /,0\d/.test(line));
}

/** The head, its lines ended by LF, as rows of cells, quotes undone. Blank lines give a row with one empty cell. */
export function splitRows(head: string, delimiter: Delimiter): string[][] {
  if (delimiter === ' ') return splitBlanks(head);
  return Papa.parse<string[]>(head, { delimiter, preview: MOST_ROWS, skipEmptyLines: false, newline: '\n' }).data;
}

function splitBlanks(head: string): string[][] {
  const rows = head.split('\n').slice(0, MOST_ROWS);
  return rows.map((row) => {
    // Headings of more than one word stand apart by more than one blank.
    const apart = row.trim().split(/ {2,}|\t+/);
    const headings = apart.length > 1 && apart.every((cell) => /[a-z]/i.test(cell) && !/^[\d.,:-]+ /.test(cell));
    return headings ? apart : row.trim().split(/[ \t]+/);
  });
}

function judge(rows: readonly (readonly string[])[], dialect: Dialect): DialectFound {
  const judged = rows.map((row) => judgeRow(row, dialect.decimal));
  const width = commonWidth(judged);
  const isData = judged.map((row) => row.isData && agrees(row, width));
  let lines = 0;
  let good = 0;
  judged.forEach((row, i) => {
    if (row.filled > 0) lines++;
    if (isData[i]) good += row.numeric / row.filled;
  });
  // Free text before the data must not tip the scale, so a few lines are forgiven.
  const share = good / Math.max(1, lines - Math.min(20, lines * 0.5), good);
  const score =
    width === 0 ? 0 : (share + good / Math.max(1, lines)) * (width === 1 ? 0.3 : 1) + Math.min(width, 50) * 1e-4;
  return { dialect, rows, width, isData, score };
}

interface JudgedRow {
  readonly width: number;
  readonly filled: number;
  readonly numeric: number;
  readonly isData: boolean;
}

function judgeRow(row: readonly string[], decimal: DecimalSign): JudgedRow {
  let filled = 0;
  let numeric = 0;
  let text = 0;
  let width = 0;
  const judgedCells = Math.min(row.length, MOST_COLUMNS_JUDGED);
  for (let i = 0; i < judgedCells; i++) {
    const kind = cellKind(row[i] ?? '', decimal);
    if (kind === 'empty') continue;
    width = i + 1;
    filled++;
    numeric += weightOf(kind, row[i] ?? '', decimal);
    if (kind === 'text') text++;
  }
  if (row.length > MOST_COLUMNS_JUDGED) width = row.length;
  return { width: Math.max(width, row.length), filled, numeric, isData: numeric > 0.5 && text * 2 <= filled };
}

/** A number with the file's own decimal sign counts whole; one that needs another reading of it counts less. */
function weightOf(kind: CellKind, cell: string, decimal: DecimalSign): number {
  if (kind === 'time') return 1;
  if (kind === 'valueUnit') return 0.9;
  if (kind !== 'number') return kind === 'missing' ? 0.5 : 0;
  return cell.includes(decimal === '.' ? ',' : '.') ? 0.8 : 1;
}

/** The width that most rows of data have. */
function commonWidth(rows: readonly JudgedRow[]): number {
  const counts = new Map<number, number>();
  for (const row of rows) if (row.isData) counts.set(row.width, (counts.get(row.width) ?? 0) + 1);
  let width = 0;
  let most = 0;
  for (const [value, count] of counts) {
    if (count > most || (count === most && value > width)) {
      most = count;
      width = value;
    }
  }
  return width;
}

/** Instruments leave trailing separators out, or put one too many. */
function agrees(row: JudgedRow, width: number): boolean {
  return row.width === width || row.width === width + 1 || (row.width < width && row.width >= Math.max(2, width * 0.5));
}
