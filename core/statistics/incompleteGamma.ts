import { logGamma } from './logGamma.ts';

const STEPS = 1000;

/**
 * Regularised lower incomplete gamma function P(a, x) for a > 0: the distribution function of a gamma variable, and
 * with a = k/2, x = y/2 of a chi-square variable with k degrees of freedom. Series below a + 1, continued fraction
 * above (Numerical Recipes in C, 6.2). x <= 0 gives 0.
 */
export function incompleteGamma(a: number, x: number): number {
  if (!(x > 0)) return 0;
  const front = Math.exp(-x + a * Math.log(x) - logGamma(a));
  return x < a + 1 ? front * series(a, x) : 1 - front * fraction(a, x);
}

function series(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let n = 1; n <= STEPS; n++) {
    term *= x / (a + n);
    sum += term;
    if (Math.abs(term) < Math.abs(sum) * 1e-16) break;
  }
  return sum;
}

function fraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = 1e300;
  let d = 1 / b;
  let h = d;
  for (let n = 1; n <= STEPS; n++) {
    const an = -n * (n - a);
    b += 2;
    d = 1 / (an * d + b || 1e-300);
    c = b + an / c || 1e-300;
    h *= d * c;
    if (Math.abs(d * c - 1) < 1e-16) break;
  }
  return h;
}

/** Quantile of the chi-square distribution with `degrees` > 0 degrees of freedom, by bisection. p in 0..1, below 1. */
export function chiSquareQuantile(p: number, degrees: number): number {
  if (!(p > 0)) return 0;
  let high = Math.max(1, degrees);
  while (incompleteGamma(degrees / 2, high / 2) < p && high < 1e9) high *= 2;
  let low = 0;
  for (let i = 0; i < 200 && high - low > 1e-15 * high; i++) {
    const middle = (low + high) / 2;
    if (incompleteGamma(degrees / 2, middle / 2) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
