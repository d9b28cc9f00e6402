import { describe, expect, test } from 'vitest';
import { keepFindings } from '../../../../core/record/edits/findings.ts';
import { addNote, rewriteNote } from '../../../../core/record/edits/notes.ts';
import { setArchived } from '../../../../core/record/edits/vehicle.ts';
import { addWindow, moveWindow, removeWindow } from '../../../../core/record/edits/windows.ts';
import {
  abandonGesture,
  absorb,
  beginGesture,
  endGesture,
  type History,
  perform,
  redo,
  redoWords,
  seal,
  sign,
  startHistory,
  undo,
  undoWords,
} from '../../../../core/record/history.ts';
import { newVehicle } from '../../../../core/record/newVehicle.ts';
import { anOpinion } from '../../../support/signedChain.ts';

const AT = '2026-11-24T08:00:00Z';
const start = startHistory(newVehicle({ id: 'v', name: 'Van 14', createdAt: AT }));
const withWindow = perform(
  start,
  addWindow({ id: 'w1', captureId: 'c1', name: '', startS: 0, endS: 10, bank: 1, kind: 'hold', origin: 'accepted' }),
);
const withNote = perform(
  start,
  addNote({
    id: 'n1',
    captureId: null,
    startS: null,
    endS: null,
    text: '',
    author: 'A',
    writtenAt: AT,
    changedAt: null,
  }),
);
const type = (history: History, text: string) => perform(history, rewriteNote('n1', text, AT), 'note n1');
const names = (history: History) => history.done.map(({ name }) => name);
const move = (history: History, startS: number, endS: number) => perform(history, moveWindow('w1', { startS, endS }));

describe('history', () => {
  test('every undo and redo says what it is about', () => {
    expect(undoWords(start)).toBeNull();
    const moved = move(withWindow, 1, 11);
    expect(undoWords(moved)).toBe('Undo: move window');
    expect(redoWords(moved)).toBeNull();
    const back = undo(moved);
    expect(undoWords(back)).toBe('Undo: accept window');
    expect(redoWords(back)).toBe('Redo: move window');
    expect(redo(back)).toEqual(moved);
  });

  test('an edit that changes nothing is no step and keeps what can be done again', () => {
    const back = undo(move(withWindow, 1, 11));
    expect(move(back, 0, 10)).toBe(back);
    expect(perform(back, setArchived(false))).toBe(back);
    expect(perform(back, removeWindow('gone'))).toBe(back);
  });

  test('a new edit after an undo drops what could be done again', () => {
    const other = move(undo(move(withWindow, 1, 11)), 2, 12);
    expect(other.undone).toEqual([]);
    expect(redo(other)).toBe(other);
  });

  test('a drag is one step, named by its last edit', () => {
    let history = beginGesture(withWindow, 'drag');
    for (let i = 1; i <= 50; i++) history = move(history, i, i + 10);
    history = endGesture(history);
    expect(names(history)).toEqual(['accept window', 'move window']);
    expect(history.record.windows.w1?.startS).toBe(50);
    expect(undo(history).record).toEqual(withWindow.record);
  });

  test('a drag that is abandoned goes back to its mark and leaves nothing, and keeps what could be done again', () => {
    const back = undo(move(withWindow, 1, 11));
    const abandoned = abandonGesture(move(beginGesture(back, 'drag'), 5, 15));
    expect(abandoned).toEqual(back);
    expect(redoWords(abandoned)).toBe('Redo: move window');
    expect(abandonGesture(back)).toBe(back);
  });

  test('a drag that ends where it began is no step', () => {
    const history = endGesture(move(move(beginGesture(withWindow, 'drag'), 5, 15), 0, 10));
    // The window was touched, so it says that it was changed: that is a difference.
    expect(names(history)).toEqual(['accept window', 'move window']);
    expect(endGesture(beginGesture(withWindow, 'drag'))).toEqual(withWindow);
  });

  test('undo during a drag abandons it and takes back nothing else; redo waits', () => {
    const dragging = move(beginGesture(undo(move(withWindow, 1, 11)), 'drag'), 5, 15);
    expect(undoWords(dragging)).toBe('Undo: move window');
    expect(redoWords(dragging)).toBeNull();
    expect(redo(dragging)).toBe(dragging);
    expect(undo(dragging).record).toEqual(withWindow.record);
  });

  test('typing is one step per pause', () => {
    const first = type(type(type(withNote, 'r'), 're'), 'rear');
    const second = type(type(seal(first), 'rear s'), 'rear sensor');
    expect(names(second)).toEqual(['add note', 'edit note', 'edit note']);
    expect(undo(second).record.notes.n1?.text).toBe('rear');
    expect(undo(undo(second)).record.notes.n1?.text).toBe('');
  });

  test('typing does not join a step of another note, of a drag, or one that was undone and done again', () => {
    const typed = type(withNote, 'a');
    expect(perform(typed, rewriteNote('n1', 'b', AT), 'note n2').done).toHaveLength(3);
    expect(type(endGesture(type(beginGesture(withNote, 'drag'), 'a')), 'b').done).toHaveLength(3);
    expect(type(redo(undo(typed)), 'ab').done).toHaveLength(3);
    expect(type(undo(type(seal(typed), 'ab')), 'ac').done).toHaveLength(3);
  });

  test('typing that is typed back leaves no step', () => {
    const history = perform(perform(start, setArchived(true), 'k'), setArchived(false), 'k');
    expect(history.done).toEqual([]);
    expect(history.record).toEqual(start.record);
  });

  test('what no person did is taken over without a step, also during a drag, and undo leaves it', () => {
    const kept = keepFindings([
      {
        id: 'f1',
        windowId: 'w1',
        coreVersion: '0',
        madeAt: AT,
        finding: 'storing',
        probabilityNotStoring: 0.01,
        sentence: 'Stores.',
      },
    ]);
    const moved = absorb(move(withWindow, 1, 11), kept);
    expect(names(moved)).toEqual(['accept window', 'move window']);
    expect(undo(moved).record.findings.f1?.finding).toBe('storing');
    const dragged = abandonGesture(absorb(move(beginGesture(withWindow, 'drag'), 5, 15), kept));
    expect(dragged.record.findings.f1?.finding).toBe('storing');
    expect(dragged.record.windows).toEqual(withWindow.record.windows);
    expect(absorb(moved, kept)).toBe(moved);
  });

  test('what was signed closes the history: undo goes no further back, and later steps are undone as ever', () => {
    const entry = { ...anOpinion('o1'), given: '0'.repeat(64), previous: null };
    const signed = sign(undo(move(withWindow, 1, 11)), entry);
    expect(signed.signed).toBe(true);
    expect([undoWords(signed), redoWords(signed)]).toEqual([null, null]);
    expect(undo(signed)).toBe(signed);
    expect(redo(signed)).toBe(signed);
    const moved = move(signed, 2, 12);
    expect(moved.signed).toBe(true);
    expect(undo(moved).record).toEqual(signed.record);
    expect(() => sign(moved, entry)).toThrow('o1');
  });

  test('signing during a drag ends the drag where it is', () => {
    const entry = { ...anOpinion('o1'), given: '0'.repeat(64), previous: null };
    const signed = sign(move(beginGesture(withWindow, 'drag'), 5, 15), entry);
    expect(signed.gesture).toBeNull();
    expect(abandonGesture(signed).record.windows.w1?.startS).toBe(5);
  });

  test('a window that is deleted comes back by undo with the findings kept about it', () => {
    const kept = { ...withWindow.record, findings: { f1: finding('f1', 'w1'), f2: finding('f2', null) } };
    const deleted = perform(startHistory(kept), removeWindow('w1'));
    expect(Object.keys(deleted.record.findings)).toEqual(['f2']);
    expect(undo(deleted).record).toEqual(kept);
  });
});

function finding(id: string, windowId: string | null) {
  return {
    id,
    windowId,
    coreVersion: '0',
    madeAt: AT,
    finding: 'weak' as const,
    probabilityNotStoring: null,
    sentence: '',
  };
}
