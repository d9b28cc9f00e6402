import type { Arrangement, TextHead } from './textPlan.ts';

const DELIMITER_WORDS = { ',': 'commas', ';': 'semicolons', '\t': 'tabs', '|': 'bars', ' ': 'blanks' } as const;

/** One sentence on how the text is laid out. */
export function layoutWords(head: TextHead, arrangement: Arrangement): string {
  const { dialect } = head.found;
  const { header } = head;
  const parts = [`Text, ${DELIMITER_WORDS[dialect.delimiter]}`];
  if (dialect.decimal === ',') parts.push('decimal commas');
  if (arrangement.kind === 'long') parts.push('one row for each value');
  if (arrangement.kind === 'paired') parts.push('a time for each channel');
  const [first, second] = header.nameRows;
  if (first === undefined) parts.push('no header');
  else
    parts.push(second === undefined ? `header in row ${first + 1}` : `header in rows ${first + 1} and ${second + 1}`);
  if (header.unitRow !== null) parts.push(`units in row ${header.unitRow + 1}`);
  parts.push(arrangement.time.words);
  return parts.join(', ');
}
