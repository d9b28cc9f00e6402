import { alikeRows } from './alikeRows.ts';
import { mixedRows } from './mixedRows.ts';
import { plainRows } from './plainRows.ts';
import { NUMBER, type OddCells, type ScanPlan, type Stage } from './scanPlan.ts';

/** So many rows may be too odd for plainRows before it is given up for mixedRows, and one in so many later on. */
const ODD_ROWS = 64;
const ROWS_AN_ODD_ONE = 32;
/** So few rows alike are not worth the looking; it is put off for twice as long each time, up to so many rows. */
const FEW_ALIKE = 16;
const MOST_APART = 255;
/** Channels that an instrument asks for in turn, at most. */
const MOST_ROUND = 64;

/** The quick ways through rows, and which of them is tried. */
export class QuickRows {
  private readonly plan: ScanPlan;
  private readonly stage: Stage;
  private readonly cells: OddCells;
  /** Which loop is tried first; 'none' where blanks divide cells. */
  private loop: 'plain' | 'mixed' | 'none';
  private oddRows = 0;
  /** Rows to be read before it is looked again whether those behind them are written alike. */
  private apart = 0;
  /** Rows after which the same channel comes again, in a text of one row a value; 1 in others, or where that is not known. */
  private round = 1;

  constructor(plan: ScanPlan, stage: Stage, cells: OddCells) {
    this.plan = plan;
    this.stage = stage;
    this.cells = cells;
    this.loop = plan.blanks ? 'none' : plan.kinds.every((kind) => kind === NUMBER) ? 'plain' : 'mixed';
  }

  /**
   * Reads some rows from `from` on, which end before `to`. Returns where it stopped, at the beginning of a row: at `from`
   * where that row has to be read by other means, or the stage is full.
   */
  read(bytes: Uint8Array, from: number, to: number): number {
    const { plan, stage, cells, round } = this;
    const model = this.loopRows(bytes, from, to, this.apart);
    const before = stage.filled;
    const next = this.loopRows(bytes, model, to, round);
    if (stage.filled < before + round || next === to) return next;
    const stride = next - model;
    const few = Math.max(1, Math.floor(FEW_ALIKE / round));
    let end = next;
    // Twice as many each time: where one column ends the likeness, the others were not read far ahead for nothing.
    for (let most = few, all = true; all; most *= 2) {
      const wanted = end + most * stride;
      end = alikeRows(bytes, end - stride, end, to, round, most, plan, stage, cells);
      all = end === wanted;
    }
    if (end - next >= few * stride || stage.filled + round > stage.capacity) this.apart = 0;
    else {
      this.apart = Math.min(MOST_APART, 2 * this.apart + 1);
      this.round = this.roundOnStage();
    }
    return end;
  }

  /** How many rows ago the channel of the last row came before. */
  private roundOnStage(): number {
    const { plan, stage } = this;
    const width = plan.kinds.length;
    const nameOf = (row: number) => stage.values[row * width + plan.names];
    const last = stage.filled - 1;
    if (plan.names < 0) return 1;
    for (let round = 1; round <= Math.min(MOST_ROUND, last); round++)
      if (nameOf(last - round) === nameOf(last)) return round;
    return this.round;
  }

  /** Told of each row that had to be read by other means, and of the rows handed out so far. */
  tellOdd(rows: number): void {
    this.oddRows++;
    if (this.loop === 'plain' && this.oddRows > ODD_ROWS && this.oddRows * ROWS_AN_ODD_ONE > rows) this.loop = 'mixed';
  }

  private loopRows(bytes: Uint8Array, from: number, to: number, most: number): number {
    if (this.loop === 'plain') return plainRows(bytes, from, to, this.plan, this.stage, most);
    if (this.loop === 'mixed') return mixedRows(bytes, from, to, this.plan, this.stage, most, this.cells);
    return from;
  }
}
