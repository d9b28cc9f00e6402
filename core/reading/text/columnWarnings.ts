// What is told about columns: those that are no channels, and those without a name.

import type { CaptureWarning } from '../../capture/warnings.ts';
import { shownText } from '../shownText.ts';
import type { TextColumn, TextHead } from './textPlan.ts';

/** More columns than this are counted only. */
const MOST_NAMED = 6;

/** Tells of columns that hold words instead of numbers, and so are no channels; nothing where `left` has none. */
export function wordColumnWarnings(left: readonly TextColumn[]): CaptureWarning[] {
  const columns = left.filter(({ sample }) => sample.texts > 0);
  if (columns.length === 0) return [];
  const named = columns.slice(0, MOST_NAMED).map(({ name, sample }) => {
    const words = [...new Set(sample.cells.filter((cell) => cell !== ''))];
    const shown = words.slice(0, 3).map((word) => `“${shownText(word, 24)}”`);
    return `“${shownText(name, 60)}” (${shown.join(', ')}${words.length > 3 ? ', …' : ''})`;
  });
  const more = columns.length > MOST_NAMED ? ` and ${columns.length - MOST_NAMED} more` : '';
  const one = columns.length === 1;
  const detail = `${named.join(', ')}${more} ${one ? 'holds' : 'hold'} words instead of numbers, and ${one ? 'was' : 'were'} left out.`;
  return [{ id: 'unreadableCells', detail, row: null, count: columns.length, repaired: false }];
}

/** Tells of rows that have more cells than the header has names: names may stand over the wrong columns. */
export function unnamedWarnings(head: TextHead): CaptureWarning[] {
  const count = unnamedAtEnd(head);
  if (count === 0) return [];
  const detail = `The header has ${count} ${count === 1 ? 'name' : 'names'} fewer than the rows have cells. If a text in the rows holds the sign that parts cells, names stand over the wrong columns.`;
  return [{ id: 'other', detail, row: null, count, repaired: false }];
}

/** Columns with values behind the last one with a name, in a file that has names. */
function unnamedAtEnd({ header, columns }: TextHead): number {
  if (header.nameRows.length === 0) return 0;
  const last = Math.max(-1, ...columns.filter(({ heading }) => heading !== '').map(({ index }) => index));
  return columns.slice(last + 1).filter(({ sample }) => sample.filled > 0).length;
}
