/** Samples in one block. */
export const BLOCK = 64;

/**
 * Lowest and highest values of blocks of BLOCK samples: the first level of a pyramid. A block without a value has
 * Infinity and -Infinity. Only whole blocks count; the last entry may be of a block that is not whole.
 */
export interface BlockExtremes {
  readonly low: Float32Array;
  readonly high: Float32Array;
}

/** Blocks for `samples` samples, none of which has a value yet; those of `before` are kept. */
export function blocksFor(samples: number, before?: BlockExtremes): BlockExtremes {
  const length = Math.ceil(samples / BLOCK);
  const low = new Float32Array(length).fill(Number.POSITIVE_INFINITY);
  const high = new Float32Array(length).fill(Number.NEGATIVE_INFINITY);
  if (before !== undefined) {
    low.set(before.low);
    high.set(before.high);
  }
  return { low, high };
}

/** Found while the values were read, and kept for as long as the values are. */
const kept = new WeakMap<Float32Array | Float64Array, BlockExtremes>();

/** Keeps the blocks of values that will not be changed any more, so that a pyramid need not walk through them again. */
export function keepBlocks(values: Float32Array | Float64Array, blocks: BlockExtremes): void {
  kept.set(values, blocks);
}

/** The blocks that were kept for these values, or null. */
export function keptBlocks(values: Float32Array | Float64Array): BlockExtremes | null {
  return kept.get(values) ?? null;
}
