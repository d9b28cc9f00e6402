// Characters that are not seen can make one name look like another, turn a line around, or steer a terminal. Wherever
// people read a stranger's text they are written out instead (T-INJ-6, T-INJ-7).

/**
 * By their Unicode categories: controls but for line end and tab, formatting characters (marks and isolates of writing
 * direction, joiners and blanks without width, soft hyphen, tags), line and paragraph separators, half surrogate pairs, and
 * the two that no XML document may hold.
 */
const UNSEEN = /(?![\n\t])[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}\ufffe\uffff]/gu;

/** The text with every character that is not seen written as "‹U+202E›". Line ends and tabs stay; CR LF becomes LF. */
export function showControls(text: string): string {
  return text.replaceAll('\r\n', '\n').replace(UNSEEN, mark);
}

/** The same on one line: line ends and tabs are written out too. */
export function showControlsOnOneLine(text: string): string {
  return text.replace(UNSEEN, mark).replace(/[\t\n]/g, mark);
}

function mark(character: string): string {
  const code = character.codePointAt(0) ?? 0;
  return `‹U+${code.toString(16).toUpperCase().padStart(4, '0')}›`;
}
