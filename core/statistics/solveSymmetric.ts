/**
 * Solves the linear system a x = b, a symmetric and positive (size b.length squared, row after row), by elimination.
 * Neither is changed. A direction in which a is flat gives 0 there.
 */
export function solveSymmetric(a: Float64Array, b: Float64Array): Float64Array {
  const n = b.length;
  const m = a.slice();
  const x = b.slice();
  for (let i = 0; i < n; i++) {
    const pivot = m[i * n + i] ?? 0;
    if (!(Math.abs(pivot) > 1e-12)) continue;
    for (let j = i + 1; j < n; j++) {
      const factor = (m[j * n + i] ?? 0) / pivot;
      for (let k = i; k < n; k++) m[j * n + k] = (m[j * n + k] ?? 0) - factor * (m[i * n + k] ?? 0);
      x[j] = (x[j] ?? 0) - factor * (x[i] ?? 0);
    }
  }
  for (let i = n - 1; i >= 0; i--) {
    const pivot = m[i * n + i] ?? 0;
    let rest = x[i] ?? 0;
    for (let k = i + 1; k < n; k++) rest -= (m[i * n + k] ?? 0) * (x[k] ?? 0);
    x[i] = Math.abs(pivot) > 1e-12 ? rest / pivot : 0;
  }
  return x;
}
