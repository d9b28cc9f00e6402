// Words and temperatures that a person adds to the record.

import { addNote, removeNote, rewriteNote, setNoteAuthor } from '../../core/record/edits/notes.ts';
import { addReading, removeReading } from '../../core/record/edits/readings.ts';
import type { Reading } from '../../core/record/schema.ts';
import type { Program } from '../program/program.ts';
import { changeSettings } from './changeSettings.ts';

export interface NotePlace {
  readonly captureId: string | null;
  readonly startS: number | null;
  readonly endS: number | null;
}

/** Writes a note; the typing of one note is one step until a pause. Returns its id. */
export function writeNote(program: Program, noteId: string | null, place: NotePlace, text: string): string {
  const { record, clock, settings, workspace } = program;
  const id = noteId ?? program.newId();
  const merge = `note ${id}`;
  if (noteId !== null) {
    record.getState().edit(rewriteNote(noteId, text, clock.instant()), merge);
    return id;
  }
  const author = settings.getState().settings.reader;
  record.getState().edit(addNote({ id, ...place, text, author, writtenAt: clock.instant(), changedAt: null }), merge);
  workspace.getState().select({ kind: 'note', id });
  program.notices.getState().say('The note is kept.');
  return id;
}

/** Keeps a name for the notes to come, and puts it under the one that is being written, if any. */
export function nameAuthor(program: Program, noteId: string | null, name: string): void {
  void changeSettings(program, { reader: name });
  if (noteId !== null) program.record.getState().edit(setNoteAuthor(noteId, name), `note ${noteId}`);
}

export function deleteNote(program: Program, id: string): void {
  program.record.getState().edit(removeNote(id));
  program.workspace.getState().select(null);
  program.notices.getState().say('The note was deleted. Undo brings it back.');
}

/** Adds a pair of surface temperatures and selects it. */
export function takeReading(program: Program, reading: Omit<Reading, 'id' | 'takenAt'>): void {
  const id = program.newId();
  program.record.getState().edit(addReading({ ...reading, id, takenAt: program.clock.instant() }));
  program.workspace.getState().select({ kind: 'reading', id });
  program.notices.getState().say('The temperature reading was added.');
}

export function deleteReading(program: Program, id: string): void {
  program.record.getState().edit(removeReading(id));
  program.workspace.getState().select(null);
  program.notices.getState().say('The temperature reading was deleted. Undo brings it back.');
}
