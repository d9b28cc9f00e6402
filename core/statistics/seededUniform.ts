/**
 * A stream of uniform numbers in [0, 1) from a whole number: the same on every machine. Weyl sequence with a mixing
 * step, 32 bits of state (after the splitmix construction; Steele, Lea and Flood, OOPSLA 2014). Good enough for
 * resampling a few hundred times, and small.
 */
export function seededUniform(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let bits = Math.imul(state ^ (state >>> 16), 0x21f0aaad);
    bits = Math.imul(bits ^ (bits >>> 15), 0x735a2d97);
    return ((bits ^ (bits >>> 15)) >>> 0) / 4294967296;
  };
}
