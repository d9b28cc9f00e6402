import type { CaptureWarning } from '../../capture/warnings.ts';
import { shownText } from '../shownText.ts';
import type { Tally, TextTally } from './tally.ts';
import type { TextHead } from './textPlan.ts';

/** Columns whose odd cells are told one by one. */
const MOST_COLUMNS = 12;

/**
 * What was odd about the text itself, as sentences. None is a repair: what is left out here has no place in a table of
 * values at their times.
 */
export function textWarnings(head: TextHead, tally: TextTally, kind: 'wide' | 'long' | 'paired'): CaptureWarning[] {
  const found: CaptureWarning[] = [];
  const say = (id: CaptureWarning['id'], of: Tally, detail: string): void => {
    if (of.count > 0) found.push({ id, detail, row: of.line === 0 ? null : of.line, count: of.count, repaired: false });
  };
  const { skipped, headers, otherTable, zeros, unplaced, short, long, missing, cut, open } = tally;
  const { remarks } = head;
  const lacking = kind === 'long' ? 'a time, a name or a number' : 'a time or a number';
  say(
    'rowsSkipped',
    remarks,
    `${rows(remarks)} between the header and the first whole row of values ${were(remarks)} left out; the first reads “${remarks.sample}”.`,
  );
  say(
    'rowsSkipped',
    skipped,
    `${rows(skipped)} without ${lacking} ${skipped.count === 1 ? 'has' : 'have'} no place on the time axis and ${were(skipped)} left out; the first reads “${skipped.sample}”.`,
  );
  say(
    'headerRepeated',
    headers,
    `The header stands again in ${headers.count} ${headers.count === 1 ? 'row, which was' : 'rows, which were'} left out.`,
  );
  say(
    'truncated',
    otherTable,
    `Another table begins here, with the header “${otherTable.sample}”; it and all that follows were left out. Save them as a file of their own to see them.`,
  );
  say(
    'rowsSkipped',
    zeros,
    `${rows(zeros)} of zero bytes ${were(zeros)} left out; instruments write them when they lose power.`,
  );
  say(
    'rowsSkipped',
    unplaced,
    `${rows(unplaced)} ${unplaced.count === 1 ? 'has' : 'have'} fewer values than the others, and blanks do not say which is missing; left out, the first reads “${unplaced.sample}”.`,
  );
  say(
    'unreadableCells',
    short,
    `${rows(short)} ${short.count === 1 ? 'has' : 'have'} fewer cells than the header; the missing values are blank.`,
  );
  say(
    'unreadableCells',
    long,
    `${rows(long)} ${long.count === 1 ? 'has' : 'have'} more cells than the header; the cells behind it belong to no channel and were left out.`,
  );
  say(
    'truncated',
    cut,
    `The last row breaks off after “${cut.sample}”, perhaps within a number, and was left out; the recording may have been cut off.`,
  );
  say(
    'unfinished',
    open,
    'The last line has no line end; if the file was cut off there, its last value may be incomplete.',
  );
  say(
    'unreadableCells',
    missing,
    `${missing.count} ${missing.count === 1 ? 'cell says' : 'cells say'} “${missing.sample}” or the like instead of a value; left blank.`,
  );
  for (const [column, of] of [...tally.unreadable].slice(0, MOST_COLUMNS)) {
    const name = shownText(head.columns[column]?.name ?? '', 60);
    say(
      'unreadableCells',
      of,
      `“${name}”: ${of.count} ${of.count === 1 ? 'cell is' : 'cells are'} no number, the first “${of.sample}”; left blank.`,
    );
  }
  const more = tally.unreadable.size - MOST_COLUMNS;
  if (more > 0)
    found.push(plain('unreadableCells', `${more} more columns hold cells that are no numbers; left blank.`));
  if (head.mixedLineEnds)
    found.push(plain('mixedLineEnds', 'Lines end in different ways; all were taken as line ends.'));
  if (head.encodingGuessed)
    found.push(plain('badEncoding', 'Some letters are not UTF-8; they were read as Windows-1252 or left out.'));
  return found;
}

function rows({ count }: Tally): string {
  return count === 1 ? 'One row' : `${count} rows`;
}

function were({ count }: Tally): string {
  return count === 1 ? 'was' : 'were';
}

function plain(id: CaptureWarning['id'], detail: string): CaptureWarning {
  return { id, detail, row: null, count: 1, repaired: false };
}
