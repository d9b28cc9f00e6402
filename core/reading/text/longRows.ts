import { ChannelRows, type RowColumns } from './channelRows.ts';
import { turnsFrom } from './turns.ts';

/** Fewer rounds are taken row by row. */
const LEAST_ROUNDS = 8;
/** Rows that are taken one by one where channels do not take turns, before it is looked again whether they do. */
const ROWS_APART = 64;

/** The channels of a long text while its rows are read. */
export class LongRows {
  /** By the numbers of their names. Names that stand only in rows that were left out leave a hole. */
  private readonly channels: (ChannelRows | undefined)[] = [];
  private readonly names: readonly string[];
  private readonly nameColumn: number;
  private readonly columns: RowColumns;
  private readonly perSecond: number;

  /** `names` by their numbers, which stand in `nameColumn` of each row; the list may grow. `perSecond` as ChannelRows. */
  constructor(names: readonly string[], nameColumn: number, columns: RowColumns, perSecond: number) {
    this.names = names;
    this.nameColumn = nameColumn;
    this.columns = columns;
    this.perSecond = perSecond;
  }

  get bytes(): number {
    return this.channels.reduce((sum, channel) => sum + (channel?.bytes ?? 0), 0);
  }

  /** Takes `count` rows of `width` values each. `decimals` of the values, as ColumnStore.take wants it. */
  take(stage: Float64Array, width: number, count: number, decimals: number): void {
    for (let row = 0; row < count; ) {
      const { round, rounds } = turnsFrom(stage, this.nameColumn, width, row, count);
      const inTurn = rounds < LEAST_ROUNDS || this.columns.time < 0 ? 0 : round * rounds;
      for (let k = 0; k < round && inTurn > 0; k++)
        this.channelOf(stage, (row + k) * width).take(stage, (row + k) * width, round * width, rounds, decimals);
      row += inTurn;
      for (const end = Math.min(count, row + ROWS_APART); row < end; row++)
        this.channelOf(stage, row * width).push(stage, row * width, decimals);
    }
    for (const channel of this.channels) channel?.store(decimals);
  }

  /** The channels that have rows, in the order in which the file first names them. */
  finish(): ChannelRows[] {
    return this.channels.filter((channel) => channel !== undefined);
  }

  private channelOf(stage: Float64Array, at: number): ChannelRows {
    const code = stage[at + this.nameColumn] ?? 0;
    const known = this.channels[code];
    if (known !== undefined) return known;
    const channel = new ChannelRows(this.names[code] ?? '', this.columns, this.perSecond);
    this.channels[code] = channel;
    return channel;
  }
}
