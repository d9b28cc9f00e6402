/**
 * Adds to the times in column `to` of `rows` rows of `width` values what column `from` says, `over` of which make one of
 * theirs: the start of the day, or milliseconds. A blank adds nothing.
 */
export function addColumn(
  stage: Float64Array,
  to: number,
  from: number,
  width: number,
  rows: number,
  over: number,
): void {
  for (let at = 0; at < rows * width; at += width) {
    const more = (stage[at + from] ?? 0) / over;
    if (!Number.isNaN(more)) stage[at + to] = (stage[at + to] ?? 0) + more;
  }
}
