/**
 * Length of the path a trace travels up and down, in its own unit: the sum of its absolute steps. Time is not part of
 * it: with time on the axis the length would depend on the unit of time (check 3.41). Fewer than two values give 0.
 */
export function pathLength(values: ArrayLike<number>): number {
  let length = 0;
  for (let i = 1; i < values.length; i++) length += Math.abs((values[i] ?? 0) - (values[i - 1] ?? 0));
  return length;
}

/**
 * The same, but only reversals of at least `play` count, as if the pen had that much play: noise and single steps of
 * the instrument, which add up without end at high sampling rates, leave no mark. Each excursion still counts with its
 * full height, so a clean wave gives the same length as pathLength. `play` 0 gives pathLength.
 */
export function pathLengthWithPlay(values: ArrayLike<number>, play: number): number {
  if (values.length === 0) return 0;
  let length = 0;
  let turn = values[0] ?? 0;
  let extreme = turn;
  let rising = true;
  for (let i = 1; i < values.length; i++) {
    const value = values[i] ?? 0;
    if (rising ? value >= extreme : value <= extreme) {
      extreme = value;
    } else if (Math.abs(value - extreme) >= play) {
      length += Math.abs(extreme - turn);
      turn = extreme;
      extreme = value;
      rising = !rising;
    }
  }
  const last = Math.abs(extreme - turn);
  return length + (last >= play ? last : 0);
}
