// The notes of a vehicle as a file of their own.

import type { Note, VehicleRecord } from '../../record/schema.ts';
import { type CsvValue, csvText, UTF8_MARK } from '../formats/csvCells.ts';
import { markdownText } from '../formats/markdownText.ts';
import type { DecimalSign } from '../sheet.ts';
import { instantWords } from '../words/quantities.ts';
import { notesInOrder, placeWords } from './notesInOrder.ts';

export const NOTE_FILE_KINDS = ['csv', 'json', 'md'] as const;
export type NoteFileKind = (typeof NOTE_FILE_KINDS)[number];

/** The notes in the order of their places. Texts of strangers are harmless in each of the three kinds. */
export function notesFile(record: VehicleRecord, kind: NoteFileKind, sign: DecimalSign): string {
  const notes = notesInOrder(record);
  if (kind === 'csv') return UTF8_MARK + csvText([HEAD, ...notes.map((note) => csvRow(note, record))], sign);
  if (kind === 'json') return `${JSON.stringify(jsonOf(notes, record), null, 2)}\n`;
  return markdownOf(notes, record, sign);
}

const HEAD = ['capture', 'from, s', 'to, s', 'note', 'author', 'written', 'changed'];

function csvRow(note: Note, record: VehicleRecord): CsvValue[] {
  const capture = captureName(note, record) ?? '';
  return [capture, note.startS, note.endS, note.text, note.author, note.writtenAt, note.changedAt ?? ''];
}

function jsonOf(notes: readonly Note[], record: VehicleRecord) {
  return {
    format: 'tailtrace-notes',
    version: 1,
    vehicle: record.identity.name,
    notes: notes.map((note) => ({
      capture: captureName(note, record),
      captureSha256: note.captureId === null ? null : (record.captures[note.captureId]?.sha256 ?? null),
      startS: note.startS,
      endS: note.endS,
      text: note.text,
      author: note.author,
      writtenAt: note.writtenAt,
      changedAt: note.changedAt,
    })),
  };
}

function captureName({ captureId }: Note, record: VehicleRecord): string | null {
  return captureId === null ? null : (record.captures[captureId]?.name ?? null);
}

function markdownOf(notes: readonly Note[], record: VehicleRecord, sign: DecimalSign): string {
  const items = notes.map((note) => {
    const when = instantWords(note.changedAt ?? note.writtenAt);
    const author = note.author.trim() === '' ? 'author not recorded' : note.author;
    return `- **${markdownText(placeWords(note, record, sign))}**: ${markdownText(note.text)} *(${markdownText(author)}, ${markdownText(when)})*`;
  });
  const list = items.length === 0 ? 'No notes.' : items.join('\n');
  return `# ${markdownText(`Notes: ${record.identity.name}`)}\n\n${list}\n`;
}
