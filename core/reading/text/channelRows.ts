import { TimeStore } from '../time/timeStore.ts';
import { ColumnStore } from './columnStore.ts';

/** Times and values that are gathered before they are stored. */
const GATHERED = 512;

/** The rows of one channel of a long text. */
export class ChannelRows {
  readonly name: string;
  readonly times: TimeStore;
  readonly values = new ColumnStore(false);
  /** Number of its unit in the list of units, or -1. */
  unit = -1;
  private readonly stage = new Float64Array(2 * GATHERED);
  private filled = 0;

  /** `perSecond` of the file's units of time make a second. */
  constructor(name: string, perSecond: number) {
    this.name = name;
    this.times = new TimeStore(perSecond, 0);
  }

  get bytes(): number {
    return this.times.bytes + this.values.bytes;
  }

  push(time: number, value: number, unit: number, decimals: number): void {
    if (this.unit < 0) this.unit = unit;
    this.stage[this.filled] = time;
    this.stage[this.filled + 1] = value;
    this.filled += 2;
    if (this.filled === this.stage.length) this.store(decimals);
  }

  /** Stores what was gathered; `decimals` as ColumnStore.take wants it. */
  store(decimals: number): void {
    if (this.filled === 0) return;
    this.times.take(this.stage, 0, 2, this.filled / 2);
    this.values.take(this.stage, 1, 2, this.filled / 2, decimals);
    this.filled = 0;
  }
}
