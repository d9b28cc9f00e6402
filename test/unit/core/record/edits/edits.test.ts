import { describe, expect, test } from 'vitest';
import { addBrick, changeBrick, removeBrick } from '../../../../../core/record/edits/bricks.ts';
import {
  addCapture,
  removeCapture,
  setCaptureKind,
  setColumnChoice,
  setRepairs,
} from '../../../../../core/record/edits/captures.ts';
import type { Edit } from '../../../../../core/record/edits/edit.ts';
import { keepFindings } from '../../../../../core/record/edits/findings.ts';
import { addNote, moveNote, removeNote, rewriteNote, setNoteAuthor } from '../../../../../core/record/edits/notes.ts';
import { addReading, changeReading, removeReading } from '../../../../../core/record/edits/readings.ts';
import {
  addTroubleCode,
  removeTroubleCode,
  setTroubleCodeStatus,
} from '../../../../../core/record/edits/troubleCodes.ts';
import { renameVehicle, setCosts, setIdentity, setPapers } from '../../../../../core/record/edits/vehicle.ts';
import {
  addWindow,
  moveWindow,
  removeWindow,
  renameWindow,
  setWindowBank,
  setWindowKind,
} from '../../../../../core/record/edits/windows.ts';
import { newVehicle } from '../../../../../core/record/newVehicle.ts';
import { keptRecord } from '../../../../support/keptRecord.ts';

const kept = keptRecord();
const AT = '2026-11-25T09:00:00Z';

describe('edits of a record', () => {
  test('a capture that is removed takes its windows, findings and notes along; readings stay and forget it', () => {
    const after = removeCapture('c1').apply(kept);
    expect(after.captures).toEqual({});
    expect(after.windows).toEqual({});
    expect(after.findings).toEqual({});
    expect(Object.keys(after.notes)).toEqual(['n2']);
    expect(after.readings.r1).toEqual({ ...kept.readings.r1, captureId: null });
    expect(after.bricks).toBe(kept.bricks);
  });

  test('a window says when an accepted offer was changed by hand, and one made by hand stays so', () => {
    const to = { startS: 1, endS: 2 };
    expect(moveWindow('w1', to).apply(kept).windows.w1).toMatchObject({ ...to, origin: 'changed' });
    const byHand = addWindow({ ...window('w2'), origin: 'byHand' }).apply(kept);
    expect(moveWindow('w2', to).apply(byHand).windows.w2?.origin).toBe('byHand');
    expect(moveWindow('w1', { startS: 61.2, endS: 121.2 }).apply(kept).windows.w1?.origin).toBe('accepted');
  });

  test('a code that is found again takes the new status and does not stand twice', () => {
    const after = addTroubleCode({ id: 't2', code: 'P0420', status: 'pending' }).apply(kept);
    expect(after.troubleCodes).toEqual({ t1: { id: 't1', code: 'P0420', status: 'pending' } });
  });

  test('a note that is rewritten keeps who wrote it and when, and says when it was changed', () => {
    expect(rewriteNote('n1', 'calm', AT).apply(kept).notes.n1).toEqual({
      ...kept.notes.n1,
      text: 'calm',
      changedAt: AT,
    });
    expect(rewriteNote('n1', kept.notes.n1?.text ?? '', AT).apply(kept).notes).toBe(kept.notes);
    expect(setNoteAuthor('n1', 'Kim').apply(kept).notes.n1).toEqual({ ...kept.notes.n1, author: 'Kim' });
    expect(moveNote('n2', 5, null, AT).apply(kept).notes).toBe(kept.notes);
    expect(moveNote('n1', 5, 6, AT).apply(kept).notes.n1).toMatchObject({ startS: 5, endS: 6, changedAt: AT });
  });

  test('findings replace those kept before, and none is kept about a window that is gone', () => {
    const one = { ...kept.findings.f1, id: 'f2' };
    const after = keepFindings([finding('f2', 'w1'), finding('f3', 'gone'), finding('f4', null)]).apply(kept);
    expect(Object.keys(after.findings)).toEqual([one.id, 'f4']);
  });

  test('what is not given stays', () => {
    expect(setIdentity({ plate: 'X' }).apply(kept).identity).toEqual({ ...kept.identity, plate: 'X' });
    expect(setPapers({ reason: 'r' }).apply(kept).papers).toEqual({ ...kept.papers, reason: 'r' });
    expect(setCosts({ labourHour: 1 }).apply(kept).costs).toEqual({ ...kept.costs, labourHour: 1 });
    expect(changeBrick('b1', { bank: 2 }).apply(kept).bricks.b1).toEqual({ ...kept.bricks.b1, bank: 2 });
    expect(changeReading('r1', { rpm: null }).apply(kept).readings.r1).toEqual({ ...kept.readings.r1, rpm: null });
    const reread = { columnChoice: null, durationS: 1, rows: 2 };
    expect(setColumnChoice('c1', reread).apply(kept).captures.c1).toEqual({ ...kept.captures.c1, ...reread });
  });

  const gone: readonly (readonly [string, Edit])[] = [
    ['setCaptureKind', setCaptureKind('gone', 'after')],
    ['setColumnChoice', setColumnChoice('gone', { columnChoice: null, durationS: 1, rows: 1 })],
    ['setRepairs', setRepairs('gone', { columnChoice: null, durationS: 1, rows: 1 })],
    ['moveWindow', moveWindow('gone', { startS: 0, endS: 1 })],
    ['renameWindow', renameWindow('gone', 'x')],
    ['setWindowBank', setWindowBank('gone', 1)],
    ['setWindowKind', setWindowKind('toString', 'idle')],
    ['removeWindow', removeWindow('gone')],
    ['changeReading', changeReading('gone', {})],
    ['removeReading', removeReading('gone')],
    ['rewriteNote', rewriteNote('gone', 'x', AT)],
    ['setNoteAuthor', setNoteAuthor('gone', 'Kim')],
    ['removeNote', removeNote('gone')],
    ['setTroubleCodeStatus', setTroubleCodeStatus('gone', 'pending')],
    ['removeTroubleCode', removeTroubleCode('gone')],
    ['changeBrick', changeBrick('gone', {})],
    ['removeBrick', removeBrick('gone')],
    ['removeCapture', removeCapture('gone')],
  ];
  test.each(gone)('%s of an entry that is gone changes nothing', (_, edit) => {
    expect(edit.apply(kept)).toEqual(kept);
    expect(edit.name).toMatch(/^[a-z][a-z ]+$/);
  });

  test('adding puts an entry under its own id', () => {
    const empty = newVehicle({ id: 'v', name: 'Van', createdAt: AT });
    const { c1 } = kept.captures;
    const { r1 } = kept.readings;
    const { b1 } = kept.bricks;
    const { n1 } = kept.notes;
    if (!c1 || !r1 || !b1 || !n1) throw new Error('the kept record is not what this test was written for');
    const full = [addCapture(c1), addReading(r1), addBrick(b1), addNote(n1), addWindow(window('w9'))];
    const after = full.reduce((now, edit) => edit.apply(now), empty);
    expect(after).toEqual({
      ...empty,
      captures: { c1 },
      readings: { r1 },
      bricks: { b1 },
      notes: { n1 },
      windows: { w9: window('w9') },
    });
  });

  test.each<[string, () => unknown]>([
    ['a window that runs backwards', () => addWindow({ ...window('w'), startS: 5, endS: 5 })],
    ['a window without an end', () => moveWindow('w1', { startS: 0, endS: Number.NaN })],
    ['a vehicle without a name', () => renameVehicle('  ')],
    ['details with an empty name', () => setIdentity({ name: '' })],
    ['a note at a moment of no capture', () => addNote(noteNowhere())],
    ['a new vehicle without a name', () => newVehicle({ id: 'v', name: ' ', createdAt: AT })],
  ])('%s is a mistake of the caller and throws', (_, wrong) => {
    expect(wrong).toThrow(RangeError);
  });
});

function window(id: string) {
  return { id, captureId: 'c1', name: '', startS: 3, endS: 9, bank: null, kind: 'idle', origin: 'byHand' } as const;
}

function finding(id: string, windowId: string | null) {
  const { f1 } = kept.findings;
  if (f1 === undefined) throw new Error('the kept record holds no finding');
  return { ...f1, id, windowId };
}

function noteNowhere() {
  return { id: 'n', captureId: null, startS: 1, endS: null, text: '', author: '', writtenAt: AT, changedAt: null };
}
