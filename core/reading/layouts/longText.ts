import { arrangementOf } from '../text/arrangementOf.ts';
import { openText } from '../text/openText.ts';
import { readTable } from '../text/readTable.ts';
import type { Layout } from './layout.ts';

/** Text with one row for each value: a time, a name, a number. */
export const longText: Layout = {
  id: 'longText',
  words: 'Text, one row for each value',
  sniff(head) {
    const { head: text } = openText(head);
    return text !== null && arrangementOf(text) === 'long' ? 0.5 : 0;
  },
  read: (input) => readTable(input, 'long'),
};
