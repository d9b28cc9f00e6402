/** The smallest of 1, 2, 5 by powers of ten that is not under `least`; 1 for nothing usable. */
export function niceStep(least: number): number {
  if (!(least > 0) || !Number.isFinite(least)) return 1;
  const power = Math.floor(Math.log10(least));
  const digit = [1, 2, 5].find((one) => Number(`${one}e${power}`) >= least * (1 - 1e-9));
  return digit === undefined ? Number(`1e${power + 1}`) : Number(`${digit}e${power}`);
}

export interface Tick {
  readonly value: number;
  /** Digits after the decimal sign that tell two neighbours apart. */
  readonly digits: number;
}

/** Multiples of a 1, 2, 5 step from low to high, both included, at most `most` of them. Low above high gives none. */
export function ticks(low: number, high: number, most: number): Tick[] {
  const step = niceStep((high - low) / Math.max(1, most - 1));
  const digits = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  const found: Tick[] = [];
  for (let i = Math.ceil(low / step - 1e-9); i <= Math.floor(high / step + 1e-9); i++) {
    found.push({ value: Number((i * step).toFixed(digits)) + 0, digits });
  }
  return found;
}
