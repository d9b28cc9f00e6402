import { findUnit } from '../../units/findUnit.ts';
import { conceptsIn, plainWords } from '../naming/concepts.ts';
import { rises, timeColumns } from './arrange.ts';
import { statusCode } from './statusWords.ts';
import type { TextColumn, TextHead } from './textPlan.ts';

/** How the rows of a text are arranged: a row a moment, a row a value, or a time column for every channel. */
export function arrangementOf(head: TextHead): 'wide' | 'long' | 'paired' {
  const times = timeColumns(head.columns);
  if (longColumns(head) !== null) return 'long';
  return isPaired(head.columns, times) ? 'paired' : 'wide';
}

/** Which column of a long text holds what. */
export interface LongColumns {
  readonly name: TextColumn;
  readonly value: TextColumn;
  readonly unit: TextColumn | null;
}

const NAME_WORDS =
  /(?:^| )(?:name|signal|channel|pid|parameter|param|item|sensor|quantity|variable|kanal|messgrosse|bezeichnung|messwert|signalname|grandeur|voie|nom|canal|magnitud|nombre|variable|description|label|key)(?: |$)/;
const VALUE_WORDS = /(?:^| )(?:value|wert|valeur|valor|reading|data|messwert|val)(?: |$)/;
const UNIT_WORDS = /(?:^| )(?:unit|units|einheit|unite|unites|unidad|unidades|uom)(?: |$)/;

/** The columns of a long text, or null where the text is not of that kind. */
export function longColumns({ columns }: TextHead): LongColumns | null {
  const times = new Set(timeColumns(columns));
  const rest = columns.filter(
    (column) => !times.has(column) && column.sample.filled > 0 && column.sample.timeForm === null,
  );
  const texts = rest.filter(({ sample }) => sample.texts * 2 > sample.filled);
  const numeric = rest.filter(({ sample }) => sample.numeric * 2 > sample.filled);
  // Without a header the times are the first numbers.
  const untold =
    times.size === 0 && numeric.length === 2 && numeric[0]?.index === 0 && rises(numeric[0].sample.numbers);
  const numbers = untold ? numeric.slice(1) : numeric;
  const name = texts.find((column) => NAME_WORDS.test(plainWords(column.heading))) ?? texts.find(looksLikeNames);
  if (name === undefined) return null;
  const named = numbers.find((column) => VALUE_WORDS.test(plainWords(column.heading)));
  const value = named ?? (numbers.length === 1 && (looksLikeNames(name) || times.size > 0) ? numbers[0] : undefined);
  if (value === undefined || (distinct(name) * 1.5 > name.sample.filled && name.sample.filled > 6)) return null;
  const unit = columns.find(
    (column) => column !== name && column !== value && UNIT_WORDS.test(plainWords(column.heading)),
  );
  return { name, value, unit: unit ?? texts.find((column) => column !== name && holdsUnits(column)) ?? null };
}

/** Few different texts, of which most hold an idea of a channel. */
function looksLikeNames(column: TextColumn): boolean {
  const names = [...new Set(column.sample.cells.filter((cell) => cell !== ''))];
  const states = names.filter((name) => !Number.isNaN(statusCode(name))).length;
  if (states * 2 >= names.length) return false;
  const known = names.filter((name) => conceptsIn(plainWords(name)).size > 0).length;
  return names.length >= 2 && names.length <= 64 && known * 2 > names.length;
}

function holdsUnits({ sample }: TextColumn): boolean {
  const words = [...new Set(sample.cells.filter((cell) => cell !== ''))];
  return words.length > 0 && words.filter((word) => findUnit(word) !== null).length * 2 > words.length;
}

function distinct({ sample }: TextColumn): number {
  return new Set(sample.cells.filter((cell) => cell !== '')).size;
}

/** Two times or more, none beside the other, the first column being one. */
function isPaired(columns: readonly TextColumn[], times: readonly TextColumn[]): boolean {
  const named = columns.filter((column) => column.heading !== '' || column.sample.filled > 0);
  if (times.length < 2 || times[0] !== named[0]) return false;
  const adjacent = times.some((time, i) => i > 0 && time.index - (times[i - 1]?.index ?? 0) < 2);
  if (adjacent || times[times.length - 1] === named[named.length - 1]) return false;
  return (
    times.length * 3 >= named.length ||
    new Set(times.map(({ heading }) => heading.trim().toLowerCase())).size < times.length
  );
}
