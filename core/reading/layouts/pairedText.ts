import { arrangementOf } from '../text/arrangementOf.ts';
import { openText } from '../text/openText.ts';
import { readTable } from '../text/readTable.ts';
import type { Layout } from './layout.ts';

/** Text with a time column for each channel. */
export const pairedText: Layout = {
  id: 'pairedText',
  words: 'Text, a time column for each channel',
  sniff(head) {
    const { head: text } = openText(head);
    return text !== null && arrangementOf(text) === 'paired' ? 0.5 : 0;
  },
  read: (input) => readTable(input, 'paired'),
};
