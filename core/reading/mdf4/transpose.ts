/**
 * Undoes the column order of a transposed compressed block. `columns` is the record length the writer used: rows =
 * floor(n / columns); the first rows * columns bytes were stored column by column, the rest follows unchanged. The
 * bytes 01 04 07 02 05 08 03 06 09 0A with 3 columns become 01 to 0A. Fewer than two columns change nothing.
 */
export function undoTranspose(stored: Uint8Array, columns: number): Uint8Array {
  if (columns < 2) return stored;
  const rows = Math.floor(stored.length / columns);
  const plain = new Uint8Array(stored.length);
  let from = 0;
  for (let column = 0; column < columns; column++) {
    for (let row = 0; row < rows; row++) plain[row * columns + column] = stored[from++] ?? 0;
  }
  plain.set(stored.subarray(from), from);
  return plain;
}
