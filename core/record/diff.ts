// What an edit did to a record, as data: for every part that changed, what it was and what it is. Undo, redo and
// listening all speak it, and nobody writes an inverse by hand.

import { sameValue } from './sameValue.ts';
import type {
  Brick,
  CaptureRef,
  Costs,
  Identity,
  KeptFinding,
  Note,
  Papers,
  Reading,
  RecordWindow,
  TroubleCode,
  VehicleRecord,
} from './schema.ts';

/** What a part was and is. Null on one side: the entry was added, or removed. */
export interface Change<T> {
  readonly from: T | null;
  readonly to: T | null;
}

/** Changes of a map's entries, by their id. Empty where the map did not change. */
export type EntryChanges<T> = Readonly<Record<string, Change<T>>>;

/** The record's parts that one edit after another may change. Format, version, id and birth of a record never do. */
export interface RecordDiff {
  readonly archived: Change<boolean> | null;
  readonly identity: Change<Identity> | null;
  readonly costs: Change<Costs> | null;
  readonly papers: Change<Papers> | null;
  readonly bricks: EntryChanges<Brick>;
  readonly troubleCodes: EntryChanges<TroubleCode>;
  readonly captures: EntryChanges<CaptureRef>;
  readonly windows: EntryChanges<RecordWindow>;
  readonly readings: EntryChanges<Reading>;
  readonly notes: EntryChanges<Note>;
  readonly findings: EntryChanges<KeptFinding>;
}

/** What must be done to `before` to get `after`. Both must be records of one vehicle; format, id and birth are not compared. */
export function diffRecords(before: VehicleRecord, after: VehicleRecord): RecordDiff {
  return {
    archived: changeOf(before.archived, after.archived),
    identity: changeOf(before.identity, after.identity),
    costs: changeOf(before.costs, after.costs),
    papers: changeOf(before.papers, after.papers),
    bricks: changesOf(before.bricks, after.bricks),
    troubleCodes: changesOf(before.troubleCodes, after.troubleCodes),
    captures: changesOf(before.captures, after.captures),
    windows: changesOf(before.windows, after.windows),
    readings: changesOf(before.readings, after.readings),
    notes: changesOf(before.notes, after.notes),
    findings: changesOf(before.findings, after.findings),
  };
}

/** `record` with every changed part as `diff` leaves it. Parts that did not change stay the same objects. */
export function applyDiff(record: VehicleRecord, diff: RecordDiff): VehicleRecord {
  return {
    ...record,
    archived: diff.archived?.to ?? record.archived,
    identity: diff.identity?.to ?? record.identity,
    costs: diff.costs?.to ?? record.costs,
    papers: diff.papers?.to ?? record.papers,
    bricks: withChanges(record.bricks, diff.bricks),
    troubleCodes: withChanges(record.troubleCodes, diff.troubleCodes),
    captures: withChanges(record.captures, diff.captures),
    windows: withChanges(record.windows, diff.windows),
    readings: withChanges(record.readings, diff.readings),
    notes: withChanges(record.notes, diff.notes),
    findings: withChanges(record.findings, diff.findings),
  };
}

/** The diff that takes back what `diff` did. */
export function reverseDiff(diff: RecordDiff): RecordDiff {
  return {
    archived: reversed(diff.archived),
    identity: reversed(diff.identity),
    costs: reversed(diff.costs),
    papers: reversed(diff.papers),
    bricks: allReversed(diff.bricks),
    troubleCodes: allReversed(diff.troubleCodes),
    captures: allReversed(diff.captures),
    windows: allReversed(diff.windows),
    readings: allReversed(diff.readings),
    notes: allReversed(diff.notes),
    findings: allReversed(diff.findings),
  };
}

/** One diff that does what `first` and then `second` do. Parts that end as they began are left out. */
export function squashDiffs(first: RecordDiff, second: RecordDiff): RecordDiff {
  return {
    archived: squashed(first.archived, second.archived),
    identity: squashed(first.identity, second.identity),
    costs: squashed(first.costs, second.costs),
    papers: squashed(first.papers, second.papers),
    bricks: allSquashed(first.bricks, second.bricks),
    troubleCodes: allSquashed(first.troubleCodes, second.troubleCodes),
    captures: allSquashed(first.captures, second.captures),
    windows: allSquashed(first.windows, second.windows),
    readings: allSquashed(first.readings, second.readings),
    notes: allSquashed(first.notes, second.notes),
    findings: allSquashed(first.findings, second.findings),
  };
}

/** Whether the diff changes nothing. */
export function isEmptyDiff(diff: RecordDiff): boolean {
  return listChanges(diff).length === 0;
}

/** The changed parts as paths: "identity", "windows/w1", with what happened to each. For announcements and tests. */
export function listChanges(diff: RecordDiff): { path: string; what: 'added' | 'updated' | 'removed' }[] {
  const { archived, identity, costs, papers, ...maps } = diff;
  const singles = Object.entries({ archived, identity, costs, papers }).flatMap(([path, change]) =>
    change === null ? [] : [{ path, what: 'updated' as const }],
  );
  const entries = Object.entries(maps).flatMap(([map, changes]) =>
    Object.entries(changes).map(([id, change]) => ({ path: `${map}/${id}`, what: kindOf(change) })),
  );
  return [...singles, ...entries];
}

function kindOf(change: Change<unknown>): 'added' | 'updated' | 'removed' {
  if (change.from === null) return 'added';
  return change.to === null ? 'removed' : 'updated';
}

function changeOf<T>(from: T, to: T): Change<T> | null {
  return sameValue(from, to) ? null : { from, to };
}

function changesOf<T>(before: Readonly<Record<string, T>>, after: Readonly<Record<string, T>>): EntryChanges<T> {
  const changes: Record<string, Change<T>> = {};
  for (const id of new Set([...Object.keys(before), ...Object.keys(after)])) {
    const from = own(before, id);
    const to = own(after, id);
    if (!sameValue(from, to)) changes[id] = { from, to };
  }
  return changes;
}

/** The entry `id`, and never what every object inherits under such a name. */
function own<T>(map: Readonly<Record<string, T>>, id: string): T | null {
  return Object.hasOwn(map, id) ? (map[id] ?? null) : null;
}

function withChanges<T>(map: Record<string, T>, changes: EntryChanges<T>): Record<string, T> {
  const listed = Object.entries(changes);
  if (listed.length === 0) return map;
  const next = { ...map };
  for (const [id, { to }] of listed) {
    if (to === null) delete next[id];
    else next[id] = to;
  }
  return next;
}

function reversed<T>(change: Change<T> | null): Change<T> | null {
  return change === null ? null : { from: change.to, to: change.from };
}

function allReversed<T>(changes: EntryChanges<T>): EntryChanges<T> {
  return Object.fromEntries(Object.entries(changes).map(([id, { from, to }]) => [id, { from: to, to: from }]));
}

function squashed<T>(first: Change<T> | null, second: Change<T> | null): Change<T> | null {
  if (first === null || second === null) return first ?? second;
  return sameValue(first.from, second.to) ? null : { from: first.from, to: second.to };
}

function allSquashed<T>(first: EntryChanges<T>, second: EntryChanges<T>): EntryChanges<T> {
  const changes: Record<string, Change<T>> = {};
  for (const id of new Set([...Object.keys(first), ...Object.keys(second)])) {
    const change = squashed(own(first, id), own(second, id));
    if (change !== null) changes[id] = change;
  }
  return changes;
}
