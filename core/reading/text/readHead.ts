import { findUnit } from '../../units/findUnit.ts';
import { splitNameAndUnit } from '../naming/splitNameAndUnit.ts';
import { shownText } from '../shownText.ts';
import { decodeText } from './decodeText.ts';
import { type DialectFound, findDialect } from './dialect.ts';
import { type EncodingFound, firstBrokenUtf8 } from './encoding.ts';
import { findHeader, type HeaderFound } from './findHeader.ts';
import { headerKeyOf } from './headerKey.ts';
import { type ColumnSample, sampleColumns } from './sampleColumns.ts';
import type { Tally } from './tally.ts';
import type { TextColumn, TextHead } from './textPlan.ts';

/** So much of a file is looked at to find its dialect and header. */
const HEAD_BYTES = 128 * 1024;

/**
 * Finds dialect, header, units and columns in the first bytes of a text, which must be UTF-8 or one byte a letter.
 * null where no row of numbers is found.
 */
export function readHead(name: string, bytes: Uint8Array, whole: boolean, encoding: EncodingFound): TextHead | null {
  const { end, onlyCr, mixed } = usableHead(bytes, whole);
  if (end === 0) return null;
  const coding = encoding.encoding === 'windows1252' ? 'windows1252' : 'utf8';
  const start = encoding.mark;
  const text = decodeText(bytes, start, end, coding).replace(/\r\n|\r/g, '\n');
  const found = findDialect(text);
  const header = findHeader(found);
  if (header === null) return null;
  const width = Math.max(found.width, namedWidth(header.names));
  const samples = sampleColumns(found, header.dataRow, width);
  const named = lacksNameOfRows(header, samples) ? beside(header) : header;
  const columns = samples.map((sample, index) => textColumn(named, sample, index));
  const line = lineOfRow(found, header.dataRow);
  const dataByte = byteOfLine(bytes, start, line);
  return {
    name,
    encoding: coding,
    encodingGuessed: encoding.guessed || (coding === 'utf8' && firstBrokenUtf8(bytes) >= 0),
    found,
    header,
    headerKey: headerKeyOf(columns.map(({ heading }) => heading)),
    columns,
    preamble: preambleOf(found, header),
    remarks: remarksOf(found, header),
    dataByte,
    rowBytes: rowBytesOf(bytes, dataByte, end, onlyCr ? 13 : 10),
    dataLine: line + 1,
    onlyCr,
    mixedLineEnds: mixed,
  };
}

/** Where the head ends behind a line end, and which line ends it has. */
function usableHead(bytes: Uint8Array, whole: boolean): { end: number; onlyCr: boolean; mixed: boolean } {
  const limit = Math.min(bytes.length, HEAD_BYTES);
  let crLf = 0;
  let cr = 0;
  let lf = 0;
  for (let i = 0; i < limit; i++) {
    if (bytes[i] === 13) {
      if (bytes[i + 1] === 10) {
        crLf++;
        i++;
      } else cr++;
    } else if (bytes[i] === 10) lf++;
  }
  const onlyCr = lf + crLf === 0 && cr > 0;
  const kinds = [crLf, cr, lf].filter((count) => count > 0).length;
  const last = bytes.subarray(0, limit).lastIndexOf(onlyCr ? 13 : 10) + 1;
  return { end: whole && bytes.length <= HEAD_BYTES ? bytes.length : last, onlyCr, mixed: kinds > 1 };
}

/** Statistics programs write the number of each row first, and no name over it: all names stand one column too early. */
function lacksNameOfRows({ names }: HeaderFound, samples: readonly ColumnSample[]): boolean {
  const last = samples[samples.length - 1];
  if (namedWidth(names) !== samples.length - 1 || last === undefined || last.filled === 0) return false;
  const numbers = samples[0]?.numbers ?? [];
  return numbers.length > 2 && numbers.every((value, i) => value === i + 1);
}

function beside(header: HeaderFound): HeaderFound {
  return { ...header, names: ['', ...header.names], units: [null, ...header.units] };
}

/** Columns up to the last one with a name: headers end in spare separators too. */
function namedWidth(names: readonly string[]): number {
  let width = names.length;
  while (width > 0 && names[width - 1] === '') width--;
  return width;
}

function rowBytesOf(bytes: Uint8Array, from: number, to: number, lineEnd: number): number {
  let lines = 0;
  for (let i = from; i < to; i++) if (bytes[i] === lineEnd) lines++;
  return lines < 2 ? 0 : (to - from) / lines;
}

function textColumn(header: HeaderFound, sample: ColumnSample, index: number): TextColumn {
  const heading = header.names[index] ?? '';
  const parted = splitNameAndUnit(heading);
  const rowUnit = header.units[index] ?? null;
  const fromRow =
    rowUnit === null || /^[[(]?\s*-*\s*[\])]?$/.test(rowUnit) ? null : rowUnit.replace(/^[[(]\s*|\s*[\])]$/g, '');
  const unit = fromRow ?? parted.unit ?? sample.cellUnit;
  const name = fromRow !== null && parted.unit !== null && findUnit(fromRow) === null ? heading : parted.name;
  return { index, name: name === '' ? `Column ${index + 1}` : name, unit, heading, sample };
}

function preambleOf({ rows, dialect }: DialectFound, header: HeaderFound): string[] {
  const end = Math.min(header.dataRow, ...header.nameRows);
  return rows.slice(0, end).map((row) => row.join(dialect.delimiter));
}

function remarksOf(found: DialectFound, { remarkRows }: HeaderFound): Tally {
  const [first] = remarkRows;
  if (first === undefined) return { count: 0, line: 0, sample: '' };
  const words = (found.rows[first] ?? []).join(' ').trim();
  return { count: remarkRows.length, line: lineOfRow(found, first) + 1, sample: shownText(words, 40) };
}

/** Number of lines before a row, lines inside quoted cells counted. */
function lineOfRow({ rows, dialect }: DialectFound, row: number): number {
  if (dialect.delimiter === ' ') return row;
  let lines = row;
  for (const cells of rows.slice(0, row)) {
    for (const cell of cells) lines += cell.split('\n').length - 1;
  }
  return lines;
}

/** Byte at which line `line` begins, counted from 0. */
function byteOfLine(bytes: Uint8Array, start: number, line: number): number {
  let pos = start;
  for (let left = line; left > 0 && pos < bytes.length; pos++) {
    if (bytes[pos] === 10) left--;
    else if (bytes[pos] === 13 && bytes[pos + 1] !== 10) left--;
  }
  return pos;
}
