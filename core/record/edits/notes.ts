// Edits of the notes. Each change keeps the time at which it was made; the caller brings the clock.

import type { Note } from '../schema.ts';
import type { Edit } from './edit.ts';
import { withChanged, withEntry, without } from './entries.ts';

/** Pins a note to a moment or a stretch of a capture, or to the vehicle. A place without a capture throws. */
export function addNote(note: Note): Edit {
  if (note.captureId === null && note.startS !== null) throw new RangeError('a note at a moment needs a capture');
  return { name: 'add note', apply: (record) => ({ ...record, notes: withEntry(record.notes, note) }) };
}

/** Writes a note anew. */
export function rewriteNote(id: string, text: string, changedAt: string): Edit {
  return changeNote('edit note', id, (note) => (note.text === text ? note : { ...note, text, changedAt }));
}

/** Says who wrote a note, where that was not known when it was begun. */
export function setNoteAuthor(id: string, author: string): Edit {
  return changeNote('edit note', id, (note) => (note.author === author ? note : { ...note, author }));
}

/** Moves a note along its capture, s from the capture's start; endS null pins it to a moment. */
export function moveNote(id: string, startS: number, endS: number | null, changedAt: string): Edit {
  return changeNote('move note', id, (note) => (note.captureId === null ? note : { ...note, startS, endS, changedAt }));
}

/** Removes a note. */
export function removeNote(id: string): Edit {
  return {
    name: 'delete note',
    apply: (record) => ({ ...record, notes: without(record.notes, (note) => note.id === id) }),
  };
}

function changeNote(name: string, id: string, change: (note: Note) => Note): Edit {
  return { name, apply: (record) => ({ ...record, notes: withChanged(record.notes, id, change) }) };
}
