/**
 * A piece of a stranger's file for a sentence: on one line, without characters that control how text is shown, at most
 * `most` characters long.
 */
export function shownText(text: string, most: number): string {
  const plain = Array.from(text.slice(0, most * 4), (letter) => (isControl(letter.codePointAt(0) ?? 0) ? ' ' : letter))
    .join('')
    .replace(/\s+/g, ' ')
    .trim();
  return plain.length > most ? `${plain.slice(0, most - 1)}…` : plain;
}

/** Controls of C0 and C1, marks of direction, byte order marks, and halves of letters. */
function isControl(code: number): boolean {
  if (code < 32 || (code >= 0x7f && code < 0xa0) || code === 0xfeff) return true;
  if (code === 0x200e || code === 0x200f || code === 0x2028 || code === 0x2029) return true;
  return (code >= 0x202a && code <= 0x202e) || (code >= 0x2066 && code <= 0x2069) || (code >= 0xd800 && code < 0xe000);
}
