import type { Program } from '../program/program.ts';
import { deleteNote, deleteReading } from './notesAndReadings.ts';
import { deleteWindow } from './windows.ts';

/** Deletes what is selected; undo brings it back. An offer is no part of the record and cannot be deleted. */
export function deleteSelected(program: Program): void {
  const { selected } = program.workspace.getState();
  if (selected === null) return;
  if (selected.kind === 'window') deleteWindow(program, selected.id);
  if (selected.kind === 'note') deleteNote(program, selected.id);
  if (selected.kind === 'reading') deleteReading(program, selected.id);
}
