const COEFFICIENTS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];

/**
 * Natural logarithm of the gamma function for x > 0, Lanczos' approximation with g = 7 and nine terms (coefficients as
 * printed by Godfrey, 2001; relative error near 1e-15). x <= 0 gives NaN.
 */
export function logGamma(x: number): number {
  if (!(x > 0)) return Number.NaN;
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x);
  const z = x - 1;
  let sum = COEFFICIENTS[0] ?? 1;
  for (let i = 1; i < COEFFICIENTS.length; i++) sum += (COEFFICIENTS[i] ?? 0) / (z + i);
  const t = z + 7.5;
  return 0.5 * Math.log(2 * Math.PI) + (z + 0.5) * Math.log(t) - t + Math.log(sum);
}
