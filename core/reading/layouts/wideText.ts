import { arrangementOf } from '../text/arrangementOf.ts';
import { openText } from '../text/openText.ts';
import { readTable } from '../text/readTable.ts';
import type { Layout } from './layout.ts';

/** Text with one row for each moment: the usual form. */
export const wideText: Layout = {
  id: 'wideText',
  words: 'Text, one row for each moment',
  sniff(head) {
    const { head: text } = openText(head);
    return text !== null && arrangementOf(text) === 'wide' ? 0.5 : 0;
  },
  read: (input) => readTable(input, 'wide'),
};
