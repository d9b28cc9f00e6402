import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { notesFile } from '../../../../../core/evidence/notes/notesFile.ts';
import { notesInOrder, placeWords } from '../../../../../core/evidence/notes/notesInOrder.ts';
import { newVehicle } from '../../../../../core/record/newVehicle.ts';
import { HOSTILE_TEXTS } from '../../../../support/hostileTexts.ts';
import { keptRecord } from '../../../../support/keptRecord.ts';

const record = keptRecord();

describe('notes as a file of their own', () => {
  test('the vehicle’s own come first, then those of each capture in the order of time', () => {
    const note = { ...record.notes.n1, id: 'n3', startS: 5 };
    const more = { ...record, notes: { ...record.notes, n3: { ...keptNote(), ...note } } };
    expect(notesInOrder(more).map(({ id }) => id)).toEqual(['n2', 'n3', 'n1']);
  });

  test('places are told by capture and second', () => {
    expect(placeWords(keptNote(), record, '.')).toBe('van-before.csv, at 80.0\u00a0s');
    expect(placeWords({ ...keptNote(), endS: 90.5 }, record, ',')).toBe('van-before.csv, 80,0 to 90,5\u00a0s');
    expect(placeWords({ ...keptNote(), captureId: null }, record, '.')).toBe('the vehicle');
    expect(placeWords({ ...keptNote(), captureId: 'gone' }, record, '.')).toContain('a capture that is gone');
  });

  test('CSV: one head row with units, one row a note', () => {
    const rows = Papa.parse(notesFile(record, 'csv', '.').replace('\ufeff', ''), { skipEmptyLines: true }).data;
    expect(rows).toEqual([
      ['capture', 'from, s', 'to, s', 'note', 'author', 'written', 'changed'],
      ['', '', '', 'Customer waits', 'First reader', '2026-11-24T08:31:00+01:00', '2026-11-24T08:32:00+01:00'],
      ['van-before.csv', '80', '', 'Rear sensor follows the front', 'First reader', '2026-11-24T08:30:00+01:00', ''],
    ]);
  });

  test('JSON: with the hash of the capture each belongs to', () => {
    const back: { notes: unknown[] } = JSON.parse(notesFile(record, 'json', '.'));
    expect(back.notes[1]).toMatchObject({
      capture: 'van-before.csv',
      startS: 80,
      endS: null,
      captureSha256: record.captures.c1?.sha256,
    });
  });

  test('Markdown', () => {
    expect(notesFile(record, 'md', '.')).toBe(
      [
        '# Notes: Van 14',
        '',
        '- **the vehicle**: Customer waits *(First reader, 2026-11-24 08:32 +01:00)*',
        '- **van-before.csv, at 80.0\u00a0s**: Rear sensor follows the front *(First reader, 2026-11-24 08:30 +01:00)*',
        '',
      ].join('\n'),
    );
    expect(notesFile(newVehicle({ id: 'v', name: 'Van', createdAt: '2026-11-24T08:00:00Z' }), 'md', '.')).toContain(
      'No notes.',
    );
  });

  test.each(HOSTILE_TEXTS.map((text) => [text]))('%j stays a text in each kind', (text) => {
    const hostile = { ...record, notes: { n1: { ...keptNote(), text, author: text } } };
    const rows = Papa.parse<string[]>(notesFile(hostile, 'csv', '.').replace('\ufeff', ''), {
      skipEmptyLines: true,
    }).data;
    expect(rows).toHaveLength(2);
    expect(rows[1]?.[3]).not.toMatch(/^[\s\p{Cc}]*[=+\-@＝＋－＠]/u);
    expect(JSON.parse(notesFile(hostile, 'json', '.')).notes[0].text).toBe(text);
    const lines = notesFile(hostile, 'md', '.').split('\n');
    expect(lines).toHaveLength(4);
    expect(lines[2]).toMatch(/^- \*\*van-before.csv/);
  });
});

function keptNote() {
  const { n1 } = record.notes;
  if (n1 === undefined) throw new Error('the kept record holds no note');
  return n1;
}
