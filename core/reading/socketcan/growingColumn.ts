/** A column whose samples arrive one by one. It doubles its room when full, so it never holds more than twice. */
export class GrowingColumn {
  private times = new Float64Array(64);
  private numbers = new Float64Array(64);
  private count = 0;

  add(timeS: number, value: number): void {
    if (this.count === this.times.length) {
      this.times = doubled(this.times);
      this.numbers = doubled(this.numbers);
    }
    this.times[this.count] = timeS;
    this.numbers[this.count] = value;
    this.count++;
  }

  get length(): number {
    return this.count;
  }

  /** Times and values so far, as copies of exactly their length. */
  finished(): { timesS: Float64Array; values: Float64Array } {
    return { timesS: this.times.slice(0, this.count), values: this.numbers.slice(0, this.count) };
  }
}

function doubled(column: Float64Array<ArrayBuffer>): Float64Array<ArrayBuffer> {
  const larger = new Float64Array(column.length * 2);
  larger.set(column);
  return larger;
}
