import { TimeStore } from '../time/timeStore.ts';
import { ColumnStore } from './columnStore.ts';

/** Times and values that are gathered before they are stored. */
const GATHERED = 512;

/** Which columns of a stage hold what a row of a long text says beside its channel; -1 for one that there is not. */
export interface RowColumns {
  readonly time: number;
  readonly value: number;
  readonly unit: number;
}

/** The rows of one channel of a long text. */
export class ChannelRows {
  readonly name: string;
  readonly times: TimeStore;
  readonly values = new ColumnStore(false);
  /** Number of its unit in the list of units, or -1. */
  unit = -1;
  private readonly columns: RowColumns;
  private readonly gathered = new Float64Array(2 * GATHERED);
  private filled = 0;

  /** `perSecond` of the file's units of time make a second. */
  constructor(name: string, columns: RowColumns, perSecond: number) {
    this.name = name;
    this.columns = columns;
    this.times = new TimeStore(perSecond, 0);
  }

  get bytes(): number {
    return this.times.bytes + this.values.bytes;
  }

  /** Takes the row that begins at `at` in `stage`; `decimals` as ColumnStore.take wants it. */
  push(stage: Float64Array, at: number, decimals: number): void {
    const { time, value } = this.columns;
    this.learnUnit(stage, at, 1, 1);
    this.gathered[this.filled] = time < 0 ? 0 : (stage[at + time] ?? Number.NaN);
    this.gathered[this.filled + 1] = stage[at + value] ?? Number.NaN;
    this.filled += 2;
    if (this.filled === this.gathered.length) this.store(decimals);
  }

  /** As push, for `rows` rows that begin `stride` apart. There must be a column of times. */
  take(stage: Float64Array, at: number, stride: number, rows: number, decimals: number): void {
    const { time, value } = this.columns;
    this.store(decimals);
    this.learnUnit(stage, at, stride, rows);
    this.times.take(stage, at + time, stride, rows);
    this.values.take(stage, at + value, stride, rows, decimals);
  }

  /** Stores what was gathered. */
  store(decimals: number): void {
    if (this.filled === 0) return;
    this.times.take(this.gathered, 0, 2, this.filled / 2);
    this.values.take(this.gathered, 1, 2, this.filled / 2, decimals);
    this.filled = 0;
  }

  /** The unit is that of the first row that has one. */
  private learnUnit(stage: Float64Array, at: number, stride: number, rows: number): void {
    const { unit } = this.columns;
    if (unit < 0) return;
    for (let row = 0, k = at + unit; row < rows && this.unit < 0; row++, k += stride) {
      const code = stage[k] ?? Number.NaN;
      if (!Number.isNaN(code)) this.unit = code;
    }
  }
}
