/**
 * Discrete Fourier transform in place: X[k] = sum x[n] exp(-2 pi i k n / N). Length a power of two; radix 2,
 * decimation in time (Cooley and Tukey 1965; Numerical Recipes in C, 12.2). Any other length throws: callers pad.
 */
export function fft(real: Float64Array, imaginary: Float64Array): void {
  const n = real.length;
  if (n !== imaginary.length || n === 0 || (n & (n - 1)) !== 0) throw new Error(`fft needs a power of two, got ${n}.`);
  reorder(real, imaginary);
  for (let size = 2; size <= n; size *= 2) {
    const half = size / 2;
    for (let k = 0; k < half; k++) {
      // The twiddle is computed afresh: a product carried along would lose digits over long transforms.
      const angle = (-2 * Math.PI * k) / size;
      const wr = Math.cos(angle);
      const wi = Math.sin(angle);
      for (let i = k; i < n; i += size) butterfly(real, imaginary, i, i + half, wr, wi);
    }
  }
}

function butterfly(re: Float64Array, im: Float64Array, a: number, b: number, wr: number, wi: number): void {
  const br = re[b] ?? 0;
  const bi = im[b] ?? 0;
  const tr = br * wr - bi * wi;
  const ti = br * wi + bi * wr;
  const ar = re[a] ?? 0;
  const ai = im[a] ?? 0;
  re[a] = ar + tr;
  im[a] = ai + ti;
  re[b] = ar - tr;
  im[b] = ai - ti;
}

/** Bit-reversed order. */
function reorder(re: Float64Array, im: Float64Array): void {
  const n = re.length;
  for (let i = 1, j = 0; i < n; i++) {
    let bit = n >> 1;
    for (; j & bit; bit >>= 1) j ^= bit;
    j ^= bit;
    if (i >= j) continue;
    swap(re, i, j);
    swap(im, i, j);
  }
}

function swap(values: Float64Array, i: number, j: number): void {
  const kept = values[i] ?? 0;
  values[i] = values[j] ?? 0;
  values[j] = kept;
}
