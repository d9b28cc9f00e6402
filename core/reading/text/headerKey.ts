/**
 * Key of a header's words, by which an earlier choice of columns is found again: two FNV-1a sums of 32 bits over the
 * headings in lower case with single blanks. Not cryptographic. Columns without names are keyed by their number.
 */
export function headerKeyOf(headings: readonly string[]): string {
  const text = headings.map((heading) => heading.trim().toLowerCase().replace(/\s+/g, ' ')).join('\u001F');
  const words = text.replaceAll('\u001F', '') === '' ? `${headings.length} columns` : text;
  return hash(words, 0x811c9dc5) + hash(words, 0x01000193);
}

function hash(text: string, seed: number): string {
  let sum = seed >>> 0;
  for (let i = 0; i < text.length; i++) {
    sum = Math.imul(sum ^ text.charCodeAt(i), 0x01000193) >>> 0;
  }
  return sum.toString(16).padStart(8, '0');
}
