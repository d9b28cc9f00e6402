// Undo and redo for every edit, as a value: each function returns the next history and leaves the old one alone, so
// whatever watches it may compare by identity. A step is a diff and its name. While a step is taken back or made again
// the diff is applied as it stands; no edit runs and nothing is recorded.

import { lookedAt } from './blindReading.ts';
import { applyDiff, diffRecords, isEmptyDiff, type RecordDiff, reverseDiff, squashDiffs } from './diff.ts';
import type { Edit } from './edits/edit.ts';
import type { Signed } from './opinionSchema.ts';
import type { VehicleRecord } from './schema.ts';

/** One step that undo takes back at once. */
export interface Step {
  /** In words, for the menu: "move window". */
  readonly name: string;
  readonly diff: RecordDiff;
  /** Edits with the same key join this step until it is sealed; null joins nothing. */
  readonly merge: string | null;
}

/** A gesture under way, such as a drag: its edits become one step when it ends, and none when it is abandoned. */
export interface Gesture {
  readonly name: string;
  /** The record when the gesture began. */
  readonly mark: VehicleRecord;
}

export interface History {
  /** The record as it is now. */
  readonly record: VehicleRecord;
  /** Steps that can be undone, oldest first. */
  readonly done: readonly Step[];
  /** Steps that can be done again, the next one last. */
  readonly undone: readonly Step[];
  readonly gesture: Gesture | null;
  /** True once something was signed: undo goes no further back than that. */
  readonly signed: boolean;
}

/** A history without steps. */
export function startHistory(record: VehicleRecord): History {
  return { record, done: [], undone: [], gesture: null, signed: false };
}

/**
 * Makes an edit. It becomes a step of its own, or joins the last step where both carry the same `merge` key (typing in
 * one note); within a gesture it belongs to the gesture. An edit that changes nothing leaves the history as it is.
 */
export function perform(history: History, edit: Edit, merge: string | null = null): History {
  const record = edit.apply(history.record);
  if (history.gesture !== null) return { ...history, record, gesture: { ...history.gesture, name: edit.name } };
  const diff = diffRecords(history.record, record);
  if (isEmptyDiff(diff)) return history;
  const last = history.done.at(-1);
  if (merge === null || last?.merge !== merge || history.undone.length > 0) {
    return { ...history, record, done: [...history.done, { name: edit.name, diff, merge }], undone: [] };
  }
  const joined = squashDiffs(last.diff, diff);
  const before = history.done.slice(0, -1);
  if (isEmptyDiff(joined)) return { ...history, record, done: before, undone: [] };
  return { ...history, record, done: [...before, { ...last, diff: joined }], undone: [] };
}

/** Ends merging: the next edit is a step of its own. Called at a pause in typing and when a field loses the focus. */
export function seal(history: History): History {
  const last = history.done.at(-1);
  if (last === undefined || last.merge === null) return history;
  return { ...history, done: [...history.done.slice(0, -1), { ...last, merge: null }] };
}

/** Sets a mark; everything performed until `endGesture` is one step. A gesture still open is ended first. */
export function beginGesture(history: History, name: string): History {
  const settled = seal(endGesture(history));
  return { ...settled, gesture: { name, mark: settled.record } };
}

/** Closes the gesture into one step, or into none where it came back to where it began. Its last edit names it. */
export function endGesture(history: History): History {
  if (history.gesture === null) return history;
  const { mark, name } = history.gesture;
  const diff = diffRecords(mark, history.record);
  if (isEmptyDiff(diff)) return { ...history, record: mark, gesture: null };
  return { ...history, done: [...history.done, { name, diff, merge: null }], undone: [], gesture: null };
}

/** Back to the gesture's mark. Leaves neither a step nor a redo, and what could be redone before still can be. */
export function abandonGesture(history: History): History {
  if (history.gesture === null) return history;
  return { ...history, record: history.gesture.mark, gesture: null };
}

/** Takes the last step back. During a gesture it abandons the gesture instead. Without steps nothing happens. */
export function undo(history: History): History {
  if (history.gesture !== null) return abandonGesture(history);
  const step = history.done.at(-1);
  if (step === undefined) return history;
  return {
    ...history,
    record: applyDiff(history.record, reverseDiff(step.diff)),
    done: history.done.slice(0, -1),
    undone: [...history.undone, { ...step, merge: null }],
  };
}

/** Makes the step that was last taken back again. Without one, or during a gesture, nothing happens. */
export function redo(history: History): History {
  const step = history.undone.at(-1);
  if (step === undefined || history.gesture !== null) return history;
  return {
    ...history,
    record: applyDiff(history.record, step.diff),
    done: [...history.done, step],
    undone: history.undone.slice(0, -1),
  };
}

/**
 * Takes over a change that no person made, such as findings kept beside the windows they are about. It is no step, and
 * what can be undone or redone stays as it is.
 */
export function absorb(history: History, edit: Edit): History {
  const record = edit.apply(history.record);
  if (isEmptyDiff(diffRecords(history.record, record))) return history;
  const { gesture } = history;
  return { ...history, record, gesture: gesture && { ...gesture, mark: edit.apply(gesture.mark) } };
}

/**
 * Adds what a reader signed, and closes the history behind it: undo takes back neither the signature nor what the signer was
 * given. No diff knows of opinions, so no undo can reach one. An opinion that came from the blind reading under way ends it;
 * one taken over from elsewhere does not. An id that is taken is a mistake and throws.
 */
export function sign(history: History, entry: Signed): History {
  const { record } = endGesture(history);
  if (Object.hasOwn(record.opinions, entry.id)) throw new RangeError(`something is signed under the id ${entry.id}`);
  const opinions = { ...record.opinions, [entry.id]: entry };
  const signed = { ...record, opinions };
  const own = entry.kind === 'opinion' && entry.reading?.startedAt === record.blindReading?.startedAt;
  const next = own ? lookedAt(signed, entry.signedAt) : signed;
  return { record: next, done: [], undone: [], gesture: null, signed: true };
}

/** Ends a blind reading in the open. No diff knows of it: undo takes no look back, and shows nothing while there was none. */
export function look(history: History, instant: string): History {
  const ended = endGesture(history);
  const record = lookedAt(ended.record, instant);
  return record === ended.record ? history : { ...ended, record };
}

/** "Undo: move window", or null where there is nothing to undo. */
export function undoWords(history: History): string | null {
  const name = history.gesture?.name ?? history.done.at(-1)?.name;
  return name === undefined ? null : `Undo: ${name}`;
}

/** "Redo: move window", or null where there is nothing to do again. */
export function redoWords(history: History): string | null {
  const step = history.undone.at(-1);
  return step === undefined || history.gesture !== null ? null : `Redo: ${step.name}`;
}
