import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { canonicalJson } from '../../core/record/canonical.ts';
import { applyDiff, diffRecords, isEmptyDiff, reverseDiff, squashDiffs } from '../../core/record/diff.ts';
import {
  abandonGesture,
  beginGesture,
  endGesture,
  type History,
  perform,
  redo,
  seal,
  sign,
  startHistory,
  undo,
} from '../../core/record/history.ts';
import { vehicleRecordSchema } from '../../core/record/schema.ts';
import { anOpinion } from '../support/signedChain.ts';
import { type EditMaker, edited, editMaker, startRecord, vehicleRecord } from './recordArbitraries.ts';

const makers = fc.array(editMaker, { maxLength: 60, size: 'max' });

describe('diffs', () => {
  test('applying a diff gives the record it was made for, and its reverse the one before', () => {
    fc.assert(
      fc.property(vehicleRecord, makers, (before, edits) => {
        const after = edited(before, edits);
        const diff = diffRecords(before, after);
        expect(applyDiff(before, diff)).toStrictEqual(after);
        expect(applyDiff(after, reverseDiff(diff))).toStrictEqual(before);
        expect(reverseDiff(reverseDiff(diff))).toStrictEqual(diff);
      }),
    );
  });

  test('two diffs squashed do what both did, and what is undone at once leaves nothing', () => {
    fc.assert(
      fc.property(vehicleRecord, makers, makers, (first, someEdits, moreEdits) => {
        const second = edited(first, someEdits);
        const third = edited(second, moreEdits);
        const squashed = squashDiffs(diffRecords(first, second), diffRecords(second, third));
        expect(applyDiff(first, squashed)).toStrictEqual(third);
        expect(squashed).toStrictEqual(diffRecords(first, third));
        const there = diffRecords(first, second);
        expect(isEmptyDiff(squashDiffs(there, reverseDiff(there)))).toBe(true);
      }),
    );
  });

  test('an edit never changes the record it was given, and gives one that the schema accepts', () => {
    fc.assert(
      fc.property(vehicleRecord, editMaker, (record, make) => {
        const before = structuredClone(record);
        const after = make(record, 'new').apply(record);
        expect(record).toEqual(before);
        expect(vehicleRecordSchema.safeParse(after).error).toBeUndefined();
      }),
    );
  });
});

/** A person at work: single edits, typing that merges, pauses, drags that end or are abandoned, undo and redo between. */
const act = fc.oneof(
  { weight: 6, arbitrary: fc.record({ kind: fc.constant('edit' as const), make: editMaker }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('type' as const), make: editMaker }) },
  fc.record({ kind: fc.constantFrom('pause' as const, 'undo' as const, 'redo' as const) }),
  fc.record({ kind: fc.constantFrom('begin' as const, 'end' as const, 'abandon' as const) }),
);
type Act = typeof act extends fc.Arbitrary<infer T> ? T : never;

function doAct(history: History, step: Act, id: string): History {
  if (step.kind === 'edit') return perform(history, step.make(history.record, id));
  if (step.kind === 'type') return perform(history, step.make(history.record, id), 'typing');
  if (step.kind === 'pause') return seal(history);
  if (step.kind === 'undo') return undo(history);
  if (step.kind === 'redo') return redo(history);
  if (step.kind === 'begin') return beginGesture(history, 'drag');
  return step.kind === 'end' ? endGesture(history) : abandonGesture(history);
}

function repeat(history: History, turn: (history: History) => History, times: number): History {
  let now = history;
  for (let i = 0; i < times; i++) now = turn(now);
  return now;
}

describe('T-AUTO-2: undo and redo', () => {
  test('undo all is the start, redo all is the end, in value and in canonical JSON, for 1000 sequences of edits', () => {
    fc.assert(
      fc.property(makers, (edits: readonly EditMaker[]) => {
        let history = startHistory(startRecord);
        edits.forEach((make, i) => {
          history = perform(history, make(history.record, `e${i}`));
        });
        const end = history.record;
        const steps = history.done.length;
        const back = repeat(history, undo, steps);
        expect(back.record).toStrictEqual(startRecord);
        expect(canonicalJson(back.record)).toBe(canonicalJson(startRecord));
        const again = repeat(back, redo, steps);
        expect(again.record).toStrictEqual(end);
        expect(canonicalJson(again.record)).toBe(canonicalJson(end));
        expect(again.done.map(({ name }) => name)).toStrictEqual(history.done.map(({ name }) => name));
      }),
      { numRuns: Math.max(1000, fc.readConfigureGlobal().numRuns ?? 0) },
    );
  });

  test('the same with typing, pauses, drags and undo in between', () => {
    fc.assert(
      fc.property(fc.array(act, { maxLength: 60, size: 'max' }), (acts) => {
        const history = endGesture(acts.reduce((now, one, i) => doAct(now, one, `e${i}`), startHistory(startRecord)));
        const steps = history.done.length;
        const back = repeat(history, undo, steps);
        expect(back.record).toStrictEqual(startRecord);
        expect(undo(back)).toBe(back);
        expect(repeat(back, redo, steps).record).toStrictEqual(history.record);
      }),
      { numRuns: 300 },
    );
  });

  test('what was signed stays whatever is done after it, and undoing all leads back to the last signature', () => {
    const signing = fc.constant({ kind: 'sign' as const });
    const acts = fc.array(fc.oneof({ weight: 5, arbitrary: act }, signing), { maxLength: 60, size: 'max' });
    fc.assert(
      fc.property(acts, (done) => {
        let history = startHistory(startRecord);
        let before = startRecord;
        done.forEach((one, i) => {
          if (one.kind !== 'sign') history = doAct(history, one, `e${i}`);
          else {
            history = sign(history, { ...anOpinion(`o${i}`), given: '0'.repeat(64), previous: null });
            before = history.record;
          }
        });
        history = endGesture(history);
        const signed = done.flatMap(({ kind }, i) => (kind === 'sign' ? [`o${i}`] : []));
        expect(Object.keys(history.record.opinions)).toEqual(signed);
        expect(repeat(history, undo, history.done.length + 1).record).toStrictEqual(before);
      }),
      { numRuns: 300 },
    );
  });
});
