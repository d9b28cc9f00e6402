import { incompleteBeta } from './incompleteBeta.ts';

/** Probability that a Student variable with `degrees` > 0 degrees of freedom lies beyond ±|t|, both sides together. */
export function studentTwoSided(t: number, degrees: number): number {
  return incompleteBeta(degrees / (degrees + t * t), degrees / 2, 0.5);
}

/** The t > 0 beyond which, on both sides together, `share` of a Student variable lies; bisection. share in (0, 1). */
export function studentQuantile(share: number, degrees: number): number {
  let low = 0;
  let high = 2;
  while (studentTwoSided(high, degrees) > share && high < 1e12) high *= 2;
  for (let i = 0; i < 200 && high - low > 1e-15 * high; i++) {
    const middle = (low + high) / 2;
    if (studentTwoSided(middle, degrees) > share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
