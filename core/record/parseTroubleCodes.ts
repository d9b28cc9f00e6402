/** What a typed list of trouble codes holds: the codes in order, each once and in capitals, and the words that are none. */
export interface TypedCodes {
  readonly codes: readonly string[];
  readonly refused: readonly string[];
}

/**
 * Reads trouble codes as people type or paste them: in any case, between commas, semicolons, blanks or line ends. A code
 * is a letter P, C, B or U, a digit 0 to 3 and three hexadecimal digits (SAE J2012, check 1.50).
 */
export function parseTroubleCodes(typed: string): TypedCodes {
  const words = typed.split(/[\s,;]+/).filter((word) => word !== '');
  const codes = words.map((word) => word.toUpperCase()).filter((word) => IS_CODE.test(word));
  return { codes: [...new Set(codes)], refused: words.filter((word) => !IS_CODE.test(word.toUpperCase())) };
}

const IS_CODE = /^[PCBU][0-3][0-9A-F]{3}$/;
