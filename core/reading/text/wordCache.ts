/** Words longer than this are not kept. */
const LONGEST = 48;
const SLOTS = 1024;

/**
 * Numbers that words stand for, found by their bytes without making a string: names of channels and states repeat in
 * every row. Holds a few hundred words; what does not fit is read the slow way each time.
 */
export class WordCache {
  private readonly words: (Uint8Array | null)[] = new Array<Uint8Array | null>(SLOTS).fill(null);
  private readonly values = new Float64Array(SLOTS);
  private count = 0;
  /** For each slot the one that was asked for next the last time: instruments name their channels in turn. */
  private readonly following = new Int32Array(SLOTS);
  private last = 0;

  /** Number of the word from `start` up to `end`, or NaN where it is not known. */
  find(bytes: Uint8Array, start: number, end: number): number {
    const guess = this.following[this.last] ?? 0;
    const word = this.words[guess] ?? null;
    if (word !== null && isWord(word, bytes, start, end)) {
      this.last = guess;
      return this.values[guess] ?? Number.NaN;
    }
    const slot = this.slotOf(bytes, start, end);
    if (slot < 0 || this.words[slot] === null) return Number.NaN;
    this.following[this.last] = slot;
    this.last = slot;
    return this.values[slot] ?? Number.NaN;
  }

  keep(bytes: Uint8Array, start: number, end: number, value: number): void {
    if (this.count > SLOTS / 2) return;
    const slot = this.slotOf(bytes, start, end);
    if (slot < 0 || this.words[slot] !== null) return;
    this.words[slot] = bytes.slice(start, end);
    this.values[slot] = value;
    this.count++;
  }

  /** Slot in which the word stands or would stand; -1 for a word that is too long. */
  private slotOf(bytes: Uint8Array, start: number, end: number): number {
    if (end - start > LONGEST) return -1;
    let hash = 0x811c9dc5;
    for (let i = start; i < end; i++) hash = Math.imul(hash ^ (bytes[i] ?? 0), 0x01000193);
    for (let slot = (hash ^ (hash >>> 15)) & (SLOTS - 1); ; slot = (slot + 1) & (SLOTS - 1)) {
      const word = this.words[slot] ?? null;
      if (word === null || isWord(word, bytes, start, end)) return slot;
    }
  }
}

function isWord(word: Uint8Array, bytes: Uint8Array, start: number, end: number): boolean {
  if (word.length !== end - start) return false;
  for (let i = 0; i < word.length; i++) if (word[i] !== bytes[start + i]) return false;
  return true;
}
