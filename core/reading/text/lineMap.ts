/** Which line of the file a kept row came from, for warnings. Only the places where the two drift apart are stored. */
export class LineMap {
  private readonly rows: number[] = [];
  private readonly lines: number[] = [];
  private static readonly MOST = 20_000;

  constructor(firstLine: number) {
    this.rows.push(0);
    this.lines.push(firstLine);
  }

  /** From kept row `row` on, rows stand at `line` and after. */
  drift(row: number, line: number): void {
    const last = this.rows.length - 1;
    if (this.rows[last] === row) this.lines[last] = line;
    else if (this.rows.length < LineMap.MOST) {
      this.rows.push(row);
      this.lines.push(line);
    }
  }

  /** Line of kept row `row`, both as an editor counts them: lines from 1, rows from 0 here. */
  lineOf(row: number): number {
    let low = 0;
    let high = this.rows.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >>> 1;
      if ((this.rows[middle] ?? 0) <= row) low = middle;
      else high = middle - 1;
    }
    return (this.lines[low] ?? 1) + row - (this.rows[low] ?? 0);
  }
}
