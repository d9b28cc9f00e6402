import { logGamma } from './logGamma.ts';

const STEPS = 400;
const SMALL = 1e-300;

/**
 * Regularised incomplete beta function I_x(a, b) for a, b > 0: the distribution function of a beta variable. Continued
 * fraction by Lentz's method (Numerical Recipes in C, 6.4). x outside 0..1 is cut to it.
 */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  return x < (a + 1) / (a + b + 2) ? (front * fraction(x, a, b)) / a : 1 - (front * fraction(1 - x, b, a)) / b;
}

function fraction(x: number, a: number, b: number): number {
  let c = 1;
  let d = 1 / away(1 - ((a + b) * x) / (a + 1));
  let h = d;
  for (let m = 1; m <= STEPS; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / away(1 + even * d);
    c = away(1 + even / c);
    h *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / away(1 + odd * d);
    c = away(1 + odd / c);
    const change = d * c;
    h *= change;
    if (Math.abs(change - 1) < 1e-15) break;
  }
  return h;
}

/** Keeps a denominator away from 0. */
function away(value: number): number {
  return Math.abs(value) < SMALL ? SMALL : value;
}

/** Quantile of the beta distribution: the x with I_x(a, b) = p, by bisection to the last bits. p is cut to 0..1. */
export function betaQuantile(p: number, a: number, b: number): number {
  if (p <= 0) return 0;
  if (p >= 1) return 1;
  let low = 0;
  let high = 1;
  for (let i = 0; i < 200 && high - low > 1e-16 * high; i++) {
    const middle = (low + high) / 2;
    if (incompleteBeta(middle, a, b) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
