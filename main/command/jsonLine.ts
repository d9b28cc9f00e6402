/** What some readers take for a line end, or a terminal for a command, although JSON allows it inside a text. */
const UNSAFE = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/gu;

/**
 * A value as one line of JSON Lines. Characters that are not seen are written as escapes, which mean the same to every
 * JSON reader, so that the line stays one line for every reader and harmless to a terminal (T-INJ-7).
 */
export function jsonLine(value: unknown): string {
  return `${JSON.stringify(value).replace(UNSAFE, escapes)}\n`;
}

function escapes(character: string): string {
  let escaped = '';
  for (let i = 0; i < character.length; i++) {
    escaped += `\\u${character.charCodeAt(i).toString(16).padStart(4, '0')}`;
  }
  return escaped;
}
