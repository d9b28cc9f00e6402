const LONGEST_BYTES = 120;
const RESERVED = /^(con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])(\.|$)/i;
/** Separators and wildcards of any system, control characters, and characters that change the direction of reading. */
const FORBIDDEN = /[/\\:*?"<>|\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu;

/**
 * A name for a file from words that a person or a capture brought along: valid on Linux, Windows and macOS, without
 * folders, not hidden, at most 120 bytes, never empty. Cleaning a clean name changes nothing.
 */
export function cleanFileName(words: string): string {
  const plain = words.normalize('NFC').replace(FORBIDDEN, ' ').replace(/\s+/gu, ' ');
  const short = cut(trimmed(plain));
  const name = trimmed(short) || 'Tailtrace';
  return RESERVED.test(name) ? cut(`_${name}`) : name;
}

/** Without what may not begin or end a name: blanks and hyphens in front, dots at either end. */
function trimmed(name: string): string {
  return name.replace(/^[\s.-]+/u, '').replace(/[\s.]+$/u, '');
}

/** At most LONGEST_BYTES bytes in UTF-8, keeping a short extension and whole characters. */
function cut(name: string): string {
  if (Buffer.byteLength(name) <= LONGEST_BYTES) return name;
  const extension = /\.[A-Za-z0-9]{1,8}$/.exec(name)?.[0] ?? '';
  let stem = '';
  for (const character of name.slice(0, name.length - extension.length)) {
    if (Buffer.byteLength(stem + character + extension) > LONGEST_BYTES) break;
    stem += character;
  }
  return `${trimmed(stem)}${extension}`;
}
