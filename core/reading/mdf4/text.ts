import { blockAt } from './blocks.ts';

const MOST_CHARACTERS = 2000;

/**
 * The text that a link leads to: a TX block as it stands, or of an MD block (a small XML document) the words of its
 * TX element. Link 0, or a block that is neither, gives ''. At most 2000 characters are kept.
 */
export function textAt(file: DataView, at: number, decodeUtf8: (bytes: Uint8Array) => string): string {
  if (at === 0) return '';
  const block = blockAt(file, at);
  if (block.id !== 'TX' && block.id !== 'MD') return '';
  const bytes = new Uint8Array(block.data.buffer, block.data.byteOffset, block.data.byteLength);
  const end = bytes.indexOf(0);
  const text = decodeUtf8(bytes.subarray(0, Math.min(end < 0 ? bytes.length : end, MOST_CHARACTERS * 4)));
  const words = block.id === 'MD' ? innerText(text) : text;
  return words.trim().slice(0, MOST_CHARACTERS);
}

function innerText(xml: string): string {
  const open = xml.indexOf('<TX>');
  const close = xml.indexOf('</TX>', open);
  if (open < 0 || close < 0) return '';
  return xml
    .slice(open + 4, close)
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&apos;', "'")
    .replaceAll('&amp;', '&');
}
