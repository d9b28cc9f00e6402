import { knownOther } from './knownOther.ts';
import type { FileHead } from './layouts/layout.ts';
import type { Problem } from './problem.ts';
import { REFUSALS } from './refusals.ts';
import { shownText } from './shownText.ts';
import { decodeText } from './text/decodeText.ts';
import { openText } from './text/openText.ts';
import { MOST_COLUMNS } from './text/textPlan.ts';

/** The refusal for a file that no layout can read, with as much of a reason as its first bytes give. */
export function whyUnreadable(head: FileHead): Problem {
  const known = knownOther(head.name, head.bytes);
  if (known !== null) return known;
  const { bytes } = openText(head);
  const zero = bytes.findIndex((byte) => byte < 9);
  if (zero >= 0 && controlShare(bytes) > 0.02) return REFUSALS.notText(head.name, `byte ${zero}`);
  const text = decodeText(bytes, 0, Math.min(bytes.length, 4000), 'utf8').replace(/^\uFEFF/, '');
  if (text.trim() === '') return REFUSALS.empty(head.name);
  const cells = Math.max(
    ...[',', ';', '\t', '|'].map((sign) => countOf(bytes, sign.charCodeAt(0), firstLineEnd(bytes))),
  );
  if (cells >= MOST_COLUMNS) return REFUSALS.tooManyColumns(head.name, cells + 1, MOST_COLUMNS);
  if (!head.whole && !bytes.includes(10) && !bytes.includes(13)) return REFUSALS.lineTooLong(head.name, bytes.length);
  const lines = text.split(/\r\n|\n|\r/).filter((line) => line.trim() !== '');
  const first = lines[0] ?? '';
  if (looksLikeMarkup(first)) {
    return REFUSALS.knownOther(
      head.name,
      'markup',
      'a page or a document with markup',
      'Export the recording as CSV or another plain text form.',
    );
  }
  if (FOREIGN_DIGITS.test(text)) return REFUSALS.otherDigits(head.name);
  if (lines.length <= 2 && /[^\s,;|][,;\t|]\s*[^\s,;|]/.test(first))
    return REFUSALS.headerOnly(head.name, lines.length);
  return REFUSALS.noNumbers(head.name, `“${shownText(first, 60)}”`);
}

/** Decimal digits of Arabic, Persian, Indian and full-width writing, several in a number. */
const FOREIGN_DIGITS = /[\u0660-\u0669\u06F0-\u06F9\u0966-\u096F\uFF10-\uFF19]{2}/;

function firstLineEnd(bytes: Uint8Array): number {
  const end = bytes.findIndex((byte) => byte === 10 || byte === 13);
  return end < 0 ? bytes.length : end;
}

function countOf(bytes: Uint8Array, sign: number, end: number): number {
  let count = 0;
  for (let i = 0; i < end; i++) if (bytes[i] === sign) count++;
  return count;
}

function controlShare(bytes: Uint8Array): number {
  const length = Math.min(bytes.length, 8192);
  let control = 0;
  for (let i = 0; i < length; i++) if ((bytes[i] ?? 0) < 9) control++;
  return control / Math.max(1, length);
}

function looksLikeMarkup(line: string): boolean {
  return /^\s*<[!?a-z]/i.test(line);
}
