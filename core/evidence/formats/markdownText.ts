import { showControlsOnOneLine } from '../words/showControls.ts';

/** Marks that begin something wherever they stand: code, emphasis, links, HTML, entities, table bars, formulas. */
const ANYWHERE = /[\\`*_[\]<>&|~$@]/g;
/** Marks that begin a heading, a list, a quotation or a rule where a line begins. */
const AT_START = /^([#+\-=]|\d{1,9}(?=[.)]))/;
/** What turns into a link without any marks in some dialects. */
const BARE_LINK = /:(?=\/\/)|(?<=\bwww)\.|:(?=[^\s]*[@/])/gi;

/**
 * Text as Markdown that means nothing but itself: no link, picture, heading, list, table bar, HTML or entity comes of it
 * (CommonMark 0.31; T-INJ-3). Line ends become blanks, so that it can stand in a table.
 */
export function markdownText(text: string): string {
  const oneLine = text
    .replace(/\s*[\r\n\u2028\u2029]+\s*/g, ' ')
    .replaceAll('\t', ' ')
    .trim();
  return showControlsOnOneLine(oneLine)
    .replace(ANYWHERE, '\\$&')
    .replace(BARE_LINK, '\\$&')
    .replace(AT_START, (start) => (/\d/.test(start) ? `${start}\\` : `\\${start}`));
}
