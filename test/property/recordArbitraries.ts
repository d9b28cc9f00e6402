// Made-up records and edits for the laws of the record. Every value passes the record's own schema.

import fc from 'fast-check';
import { REPAIR_IDS } from '../../core/capture/repairs.ts';
import { withAsWritten } from '../../core/record/asWritten.ts';
import { addBrick, changeBrick, removeBrick } from '../../core/record/edits/bricks.ts';
import {
  addCapture,
  removeCapture,
  setCaptureKind,
  setColumnChoice,
  setRepairs,
} from '../../core/record/edits/captures.ts';
import type { Edit } from '../../core/record/edits/edit.ts';
import { keepFindings } from '../../core/record/edits/findings.ts';
import { addNote, moveNote, removeNote, rewriteNote } from '../../core/record/edits/notes.ts';
import { addReading, changeReading, removeReading } from '../../core/record/edits/readings.ts';
import { addTroubleCode, removeTroubleCode, setTroubleCodeStatus } from '../../core/record/edits/troubleCodes.ts';
import { renameVehicle, setArchived, setCosts, setIdentity, setPapers } from '../../core/record/edits/vehicle.ts';
import {
  addWindow,
  addWindows,
  moveWindow,
  removeWindow,
  renameWindow,
  setWindowBank,
  setWindowKind,
} from '../../core/record/edits/windows.ts';
import { newVehicle } from '../../core/record/newVehicle.ts';
import { DISAGREEMENTS, type Opinion, type Withdrawal } from '../../core/record/opinionSchema.ts';
import type {
  CaptureRef,
  KeptFinding,
  Note,
  Reading,
  RecordWindow,
  TroubleCode,
  VehicleRecord,
} from '../../core/record/schema.ts';

export const bank = fc.constantFrom<1 | 2 | null>(1, 2, null);
export const number = fc.double({ min: -1e6, max: 1e6, noNaN: true });
const positive = fc.double({ min: 0, max: 1e6, noNaN: true });
/** Names and remarks, also with what a stranger may put into them. */
export const words = fc.string({ unit: 'grapheme', maxLength: 40 });
const instant = fc
  .date({ min: new Date('2000-01-01'), max: new Date('2090-01-01'), noInvalidDate: true })
  .map((date) => date.toISOString());
const temperature = fc.record({ value: number, unit: fc.constantFrom<'C' | 'F' | 'K'>('C', 'F', 'K') });
const stretch = fc
  .tuple(number, fc.double({ min: 0.001, max: 1e5, noNaN: true }))
  .map(([startS, lengthS]) => ({ startS, endS: startS + lengthS }));

const columnChoice = fc
  .tuple(words, fc.subarray([...REPAIR_IDS]))
  .map(([headerKey, repairs]) => withAsWritten(null, headerKey, repairs));

export const capture: fc.Arbitrary<Omit<CaptureRef, 'id'>> = fc.record({
  kind: fc.constantFrom<CaptureRef['kind']>('before', 'after', 'knownGood', 'other'),
  name: words,
  bytes: fc.nat(),
  sha256: fc.string({ unit: fc.constantFrom(...'0123456789abcdef'), minLength: 64, maxLength: 64 }),
  addedAt: instant,
  durationS: positive,
  rows: fc.nat(),
  columnChoice,
  sample: fc.boolean(),
});

const window: fc.Arbitrary<Omit<RecordWindow, 'id' | 'captureId'>> = fc
  .record({
    name: words,
    place: stretch,
    bank,
    kind: fc.constantFrom<RecordWindow['kind']>('hold', 'cruise', 'idle', 'snap', 'fuelCut', 'mixed'),
    origin: fc.constantFrom<RecordWindow['origin']>('suggested', 'accepted', 'changed', 'byHand'),
  })
  .map(({ place, ...rest }) => ({ ...rest, ...place }));

const reading: fc.Arbitrary<Omit<Reading, 'id' | 'captureId'>> = fc.record({
  bank,
  brick: fc.option(fc.integer({ min: 1, max: 9 })),
  inlet: temperature,
  outlet: temperature,
  rpm: fc.option(positive),
  emissivity: fc.option(fc.double({ min: 0.01, max: 1, noNaN: true })),
  takenAt: instant,
});

const note: fc.Arbitrary<Pick<Note, 'startS' | 'endS' | 'text' | 'author' | 'writtenAt'>> = fc.record({
  startS: number,
  endS: fc.option(number),
  text: words,
  author: words,
  writtenAt: instant,
});

const code: fc.Arbitrary<Omit<TroubleCode, 'id'>> = fc.record({
  code: fc.constantFrom('P0420', 'P0171', 'P0300', 'U0100', 'P2A01'),
  status: fc.constantFrom<TroubleCode['status']>('confirmed', 'pending', 'permanent', 'unknown'),
});

const finding: fc.Arbitrary<Omit<KeptFinding, 'id' | 'windowId'>> = fc.record({
  coreVersion: words,
  madeAt: instant,
  finding: fc.constantFrom<KeptFinding['finding']>('storing', 'weak', 'notStoring', 'cannotTell'),
  probabilityNotStoring: fc.option(fc.double({ min: 0, max: 1, noNaN: true })),
  sentence: words,
});

const sha256 = fc.string({ unit: fc.constantFrom(...'0123456789abcdef'), minLength: 64, maxLength: 64 });
const name = words.map((some) => `r${some}`);
const answer = fc.constantFrom<Opinion['finding']>('storing', 'weak', 'notStoring', 'cannotTell');

const restingWindow: fc.Arbitrary<Opinion['windows'][number]> = fc
  .record({
    captureSha256: sha256,
    place: stretch,
    bank,
    kind: fc.constantFrom<RecordWindow['kind']>('hold', 'idle'),
    coreSaid: fc.array(
      fc.record({
        bank,
        coreVersion: words,
        finding: answer,
        probabilityNotStoring: fc.option(fc.double({ min: 0, max: 1, noNaN: true })),
        conditions: fc.dictionary(fc.constantFrom('engineWarm', 'closedLoop'), fc.option(fc.boolean())),
        measures: fc.dictionary(fc.constantFrom('switchRatio', 'lagS'), fc.option(number)),
      }),
      { maxLength: 2 },
    ),
  })
  .map(({ place, ...rest }) => ({ ...rest, ...place }));

const link = { author: fc.record({ name, licence: words }), signedAt: instant, coreVersion: words };

/** What a reader might sign, made once it is known under which id and, when it is signed, behind what. */
export const signedEntry: fc.Arbitrary<
  (id: string) => Omit<Opinion, 'given' | 'previous'> | Omit<Withdrawal, 'given' | 'previous'>
> = fc.oneof(
  fc
    .record({
      ...link,
      finding: answer,
      confidence: fc.integer({ min: 1, max: 99 }),
      reasons: words,
      nextTest: words,
      answers: fc.option(fc.constantFrom('o0', 'o1')),
      disagreement: fc.option(fc.constantFrom(...DISAGREEMENTS)),
      windows: fc.array(restingWindow, { maxLength: 3 }),
      reading: fc.option(fc.record({ startedAt: instant, lookedAt: fc.option(instant) })),
    })
    .map(({ reading, ...rest }) => (id: string) => ({
      ...rest,
      ...(reading === null ? {} : { reading }),
      id,
      kind: 'opinion' as const,
    })),
  fc
    .record({ ...link, withdraws: fc.constantFrom('o0', 'o1'), reason: words })
    .map((rest) => (id: string) => ({ ...rest, id, kind: 'withdrawal' as const })),
);

/** What an edit becomes once the record it meets is known: `id` is new, `pick` chooses among what is there. */
export type EditMaker = (record: VehicleRecord, id: string) => Edit;

const pick = fc.nat({ max: 1000 });

/** An id that is in the map, chosen by `choice`; one that is nowhere where the map is empty. */
function there(map: Readonly<Record<string, unknown>>, choice: number): string {
  const ids = Object.keys(map);
  return ids[choice % ids.length] ?? 'gone';
}

const made = <T>(arbitrary: fc.Arbitrary<T>, make: (value: T, record: VehicleRecord, id: string) => Edit) =>
  arbitrary.map(
    (value): EditMaker =>
      (record, id) =>
        make(value, record, id),
  );

/** Every edit there is, made up. */
export const editMaker: fc.Arbitrary<EditMaker> = fc.oneof(
  made(words, (name) => renameVehicle(`v${name}`)),
  made(fc.record({ vin: words, modelYear: fc.option(fc.integer({ min: 1900, max: 2200 })) }), setIdentity),
  made(fc.boolean(), setArchived),
  made(fc.record({ converterPrice: positive }), setCosts),
  made(fc.record({ reason: words }), setPapers),
  made(capture, (one, _, id) => addCapture({ ...one, id })),
  made(fc.tuple(pick, fc.constantFrom<CaptureRef['kind']>('before', 'after')), ([n, kind], { captures }) =>
    setCaptureKind(there(captures, n), kind),
  ),
  made(fc.tuple(pick, positive), ([n, durationS], { captures }) =>
    setColumnChoice(there(captures, n), { columnChoice: null, durationS, rows: 3 }),
  ),
  made(fc.tuple(pick, columnChoice), ([n, chosen], { captures }) =>
    setRepairs(there(captures, n), { columnChoice: chosen, durationS: 1, rows: 3 }),
  ),
  made(pick, (n, { captures }) => removeCapture(there(captures, n))),
  made(fc.tuple(window, pick), ([one, n], { captures }, id) =>
    addWindow({ ...one, id, captureId: there(captures, n) }),
  ),
  made(fc.tuple(window, window), ([a, b], { captures }, id) =>
    addWindows([
      { ...a, id: `${id}a`, captureId: there(captures, 0) },
      { ...b, id: `${id}b`, captureId: there(captures, 1) },
    ]),
  ),
  made(fc.tuple(pick, stretch), ([n, to], { windows }) => moveWindow(there(windows, n), to)),
  made(fc.tuple(pick, words), ([n, name], { windows }) => renameWindow(there(windows, n), name)),
  made(fc.tuple(pick, bank), ([n, to], { windows }) => setWindowBank(there(windows, n), to)),
  made(pick, (n, { windows }) => setWindowKind(there(windows, n), 'idle')),
  made(pick, (n, { windows }) => removeWindow(there(windows, n))),
  made(fc.tuple(reading, pick), ([one, n], { captures }, id) =>
    addReading({ ...one, id, captureId: Object.keys(captures)[n % 3] ?? null }),
  ),
  made(fc.tuple(pick, temperature), ([n, inlet], { readings }) => changeReading(there(readings, n), { inlet })),
  made(pick, (n, { readings }) => removeReading(there(readings, n))),
  made(fc.tuple(note, pick), ([one, n], { captures }, id) =>
    addNote({ ...one, id, captureId: there(captures, n), changedAt: null }),
  ),
  made(fc.tuple(pick, words, instant), ([n, text, at], { notes }) => rewriteNote(there(notes, n), text, at)),
  made(fc.tuple(pick, number, instant), ([n, startS, at], { notes }) => moveNote(there(notes, n), startS, null, at)),
  made(pick, (n, { notes }) => removeNote(there(notes, n))),
  made(code, (one, _, id) => addTroubleCode({ ...one, id })),
  made(pick, (n, { troubleCodes }) => setTroubleCodeStatus(there(troubleCodes, n), 'pending')),
  made(pick, (n, { troubleCodes }) => removeTroubleCode(there(troubleCodes, n))),
  made(fc.tuple(bank, fc.integer({ min: 1, max: 9 })), ([of, position], _, id) =>
    addBrick({ id, bank: of, position, place: 'underfloor', beforeRearSensor: true }),
  ),
  made(pick, (n, { bricks }) => changeBrick(there(bricks, n), { place: 'closeCoupled' })),
  made(pick, (n, { bricks }) => removeBrick(there(bricks, n))),
  made(finding, (one, { windows }, id) => keepFindings([{ ...one, id, windowId: there(windows, 0) }])),
);

export const startRecord = newVehicle({ id: 'vehicle-1', name: 'Van 14', createdAt: '2026-11-24T08:00:00Z' });

/** The record after the edits, each made for the record it meets. */
export function edited(record: VehicleRecord, makers: readonly EditMaker[]): VehicleRecord {
  return makers.reduce((now, make, i) => make(now, `e${i}`).apply(now), record);
}

/** A record with whatever some edits put into it. */
export const vehicleRecord: fc.Arbitrary<VehicleRecord> = fc
  .array(editMaker, { maxLength: 60 })
  .map((makers) => edited(startRecord, makers));
