/**
 * Moves the values of a list about until the one at place `k` is the one that would stand there if all were sorted, no
 * larger one stands before it and no smaller one behind it. In time that grows with the length, not with its logarithm
 * too: Hoare's FIND (Communications of the ACM 4 (1961) 321, algorithm 65), the middle value of three as the pivot.
 * Values must be finite, and k a place of the list.
 */
export function select(values: Float64Array, k: number): void {
  let low = 0;
  let high = values.length - 1;
  while (low < high) {
    const pivot = middleOf(values[low] ?? 0, values[(low + high) >> 1] ?? 0, values[high] ?? 0);
    let i = low;
    let j = high;
    while (i <= j) {
      while ((values[i] ?? 0) < pivot) i++;
      while ((values[j] ?? 0) > pivot) j--;
      if (i > j) break;
      const kept = values[i] ?? 0;
      values[i] = values[j] ?? 0;
      values[j] = kept;
      i++;
      j--;
    }
    if (k <= j) high = j;
    else if (k >= i) low = i;
    else return; // between the two parts stands the pivot alone
  }
}

function middleOf(a: number, b: number, c: number): number {
  return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
}
