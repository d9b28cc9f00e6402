import type { TimeForm } from '../timeForms/timeForm.ts';
import { parseNumber } from './parseNumber.ts';
import { statusCode } from './statusWords.ts';
import { WordCache } from './wordCache.ts';

/** How the cells of a column of words become numbers. */
export interface TextReader {
  /** Number of a cell in its usual form, or NaN, which leaves the cell to `read`. Has no effect that can be seen. */
  quick(bytes: Uint8Array, start: number, end: number): number;
  /** Number of a cell, trimmed and not empty; NaN where it has none. */
  read(text: string): number;
  /** Told what `read` made of the bytes. */
  learn(bytes: Uint8Array, start: number, end: number, value: number): void;
}

/** Reads times of one form, in seconds. */
export function timeReader(form: TimeForm): TextReader {
  return {
    quick: (bytes, start, end) => form.quick?.(bytes, start, end) ?? Number.NaN,
    read: (text) => form.parse(text),
    learn: () => undefined,
  };
}

/** Reads states as codes, see statusWords.ts; numbers among them stay numbers. */
export function statusReader(decimal: '.' | ','): TextReader {
  return cached((text) => {
    const number = parseNumber(text, decimal);
    return Number.isNaN(number) ? statusCode(text) : number;
  });
}

/** Reads names of channels as the numbers that `codeOf` gives them. */
export function nameReader(codeOf: (text: string) => number): TextReader {
  return cached(codeOf);
}

function cached(read: (text: string) => number): TextReader {
  const cache = new WordCache();
  return {
    quick: (bytes, start, end) => cache.find(bytes, start, end),
    read,
    learn(bytes, start, end, value) {
      if (!Number.isNaN(value)) cache.keep(bytes, start, end, value);
    },
  };
}
