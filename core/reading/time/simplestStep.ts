/**
 * The decimal number with the fewest digits that, taken `count` times, ends within `allowed` of `count` times `mean`: 0.1
 * where the mean of many rounded steps is 0.10000000099. The mean itself where no short one does.
 */
export function simplestStep(mean: number, count: number, allowed: number): number {
  for (let digits = 1; digits <= 12; digits++) {
    const short = Number(mean.toPrecision(digits));
    if (Math.abs(short - mean) * count <= allowed) return short;
  }
  return mean;
}
