import { notesInOrder, placeWords } from '../notes/notesInOrder.ts';
import { textCell } from '../words/numbers.ts';
import { instantWords } from '../words/quantities.ts';
import type { SectionMaker } from './section.ts';

/** Notes of all readers, the vehicle's first, then capture by capture in the order of time. */
export const notes: SectionMaker = {
  id: 'notes',
  build({ record, settings }) {
    const sorted = notesInOrder(record);
    if (sorted.length === 0) return null;
    return {
      id: 'notes',
      title: 'Notes',
      blocks: [
        {
          kind: 'table',
          id: 'notes',
          caption: 'What readers wrote down, and where',
          columns: [
            { id: 'where', words: 'Where', unit: null, align: 'left' },
            { id: 'note', words: 'Note', unit: null, align: 'left' },
            { id: 'author', words: 'By', unit: null, align: 'left' },
            { id: 'writtenAt', words: 'Written', unit: null, align: 'left' },
          ],
          rows: sorted.map((note) => [
            { kind: 'text', text: placeWords(note, record, settings.decimalSign) },
            textCell(note.text),
            textCell(note.author),
            { kind: 'text', text: instantWords(note.changedAt ?? note.writtenAt) },
          ]),
        },
      ],
    };
  },
};
