/** A stream of pseudo-random numbers that is a function of its seed alone: the same on every machine. */
export interface Random {
  /** Uniform in [0, 1), 32 bits fine. */
  next(): number;
  /** Normal with mean 0 and deviation 1. */
  gauss(): number;
  /** Uniform in [low, high). */
  between(low: number, high: number): number;
  /** Uniform in the logarithm; low and high above 0. */
  logBetween(low: number, high: number): number;
  /** True with probability p. */
  chance(p: number): boolean;
  /** One of the items, all alike likely. Throws for an empty list. */
  pick<T>(items: readonly T[]): T;
  /** A stream of its own for a part: what one part draws never shifts what another gets. */
  fork(label: number): Random;
}

/** Scrambles 32 bits: the finaliser of MurmurHash3 (Austin Appleby, public domain). */
function scramble(bits: number): number {
  let h = bits >>> 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}

function rotateLeft(bits: number, by: number): number {
  return (bits << by) | (bits >>> (32 - by));
}

/**
 * The generator xoshiro128** 1.1: 32 bits a call, period 2^128 - 1. The state must not be all zero.
 * Source: D. Blackman, S. Vigna, "Scrambled linear pseudorandom number generators", ACM Trans. Math. Softw. 47 (2021)
 * 36, and their public-domain reference code.
 */
export function xoshiro128(state: readonly [number, number, number, number]): () => number {
  let [a, b, c, d] = state;
  return () => {
    const result = Math.imul(rotateLeft(Math.imul(b, 5), 7), 9) >>> 0;
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = rotateLeft(d, 11);
    return result;
  };
}

/**
 * A stream from any integer seed. Normal deviates by the polar method (G. Marsaglia, T. A. Bray, SIAM Review 6 (1964)
 * 260).
 */
export function createRandom(seed: number): Random {
  const word = (k: number) => scramble((seed >>> 0) + Math.imul(k, 0x9e3779b9));
  const bits = xoshiro128([word(1), word(2), word(3), word(4) | 1]);
  const next = () => bits() / 4294967296;
  let spare = Number.NaN;
  const gauss = () => {
    if (!Number.isNaN(spare)) {
      const kept = spare;
      spare = Number.NaN;
      return kept;
    }
    for (;;) {
      const u = 2 * next() - 1;
      const v = 2 * next() - 1;
      const square = u * u + v * v;
      if (square >= 1 || square === 0) continue;
      const factor = Math.sqrt((-2 * Math.log(square)) / square);
      spare = v * factor;
      return u * factor;
    }
  };
  return {
    next,
    gauss,
    between: (low, high) => low + (high - low) * next(),
    logBetween: (low, high) => low * Math.exp(Math.log(high / low) * next()),
    chance: (p) => next() < p,
    pick: (items) => {
      const item = items[Math.floor(next() * items.length)];
      if (item === undefined) throw new Error('Nothing to pick from.');
      return item;
    },
    fork: (label) => createRandom(scramble(seed ^ scramble(label + 0x51ed27))),
  };
}
