import type { TimePlan } from '../time/timePlan.ts';
import type { DialectFound } from './dialect.ts';
import type { Encoding } from './encoding.ts';
import type { HeaderFound } from './findHeader.ts';
import type { ColumnSample } from './sampleColumns.ts';
import type { Tally } from './tally.ts';

/** More columns than this are no recording. */
export const MOST_COLUMNS = 4096;

/** A column of the file as the header and the first rows show it. */
export interface TextColumn {
  readonly index: number;
  /** Name without its unit; "Column 3" where the header has none. */
  readonly name: string;
  /** Unit from the header, from the row of units or from the cells; null where the file gives none. */
  readonly unit: string | null;
  /** The whole heading as it stands in the file. */
  readonly heading: string;
  readonly sample: ColumnSample;
}

/** Everything found in the head of a text, before its rows are read. */
export interface TextHead {
  readonly name: string;
  readonly encoding: Encoding;
  readonly encodingGuessed: boolean;
  readonly found: DialectFound;
  readonly header: HeaderFound;
  readonly headerKey: string;
  readonly columns: readonly TextColumn[];
  /** Lines before the header, for what they tell about rate and date. */
  readonly preamble: readonly string[];
  /** Rows between header and data that were passed over. */
  readonly remarks: Tally;
  /** Byte at which the rows of data begin, and its line number, from 1. */
  readonly dataByte: number;
  readonly dataLine: number;
  /** Bytes of a row, on average over the head. */
  readonly rowBytes: number;
  /** Lines end in CR alone. */
  readonly onlyCr: boolean;
  readonly mixedLineEnds: boolean;
}

/** How the rows are arranged, and where times come from. */
export interface Arrangement {
  readonly kind: 'wide' | 'long' | 'paired';
  readonly time: TimePlan;
}
