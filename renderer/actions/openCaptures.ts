// From picked files to captures of a vehicle. Bad files say so where they were opened; the rest of the work stays.

import type { Picked } from '../../core/bridge/shellMessages.ts';
import type { Problem } from '../../core/reading/problem.ts';
import { addCapture } from '../../core/record/edits/captures.ts';
import { newVehicle } from '../../core/record/newVehicle.ts';
import { sameValue } from '../../core/record/sameValue.ts';
import type { CaptureRef, VehicleRecord } from '../../core/record/schema.ts';
import type { Stretch } from '../../core/windows/window.ts';
import type { Program } from '../program/program.ts';
import { openVehicleId, recordOf } from '../state/recordStore.ts';
import { offerId } from '../state/selectors/offers.ts';
import { holdCapture, showCapture } from './holdCapture.ts';
import { openRecord, openVehicle, vehicleLeft } from './openVehicle.ts';
import { type ReadFile, readPicked } from './readPicked.ts';
import { checkBundles } from './receiveBundles.ts';
import { refreshShelf } from './refreshShelf.ts';
import { isSampleVehicle, sampleCapture, sampleVehicle, stemOf } from './sampleStories.ts';
import { showBeginning } from './showBeginning.ts';

/** Seconds across in which a front sensor's switches can be told apart on a laptop. */
const READABLE_S = 20;

/** 'open' joins the vehicle that is open, where there is one; 'new' begins a vehicle with the first of the files. */
export type Into = 'open' | 'new';

/** Asks which files, and opens them. */
export async function pickCaptures(program: Program): Promise<void> {
  await openPicked(program, await program.shell.pickCaptures(null));
}

/** Opens files that were dropped on the window. What is no file says so at once. */
export async function openDropped(program: Program, files: readonly unknown[], into: Into): Promise<void> {
  const taken = await program.shell.takeFiles(files);
  program.notices.getState().clear('open');
  for (const one of taken) if (!one.ok) tell(program, one.problem);
  await openEach(
    program,
    taken.flatMap((one) => (one.ok ? [one.picked] : [])),
    into,
  );
}

/** Opens picked files one after another and shows the last of them; each that cannot be opened says why. */
export async function openPicked(program: Program, picks: readonly Picked[], into: Into = 'open'): Promise<void> {
  program.notices.getState().clear('open');
  await openEach(program, picks, into);
}

/** A bundle is looked at before it is taken in. */
async function openEach(program: Program, picks: readonly Picked[], into: Into): Promise<void> {
  const { record } = program;
  let where = into;
  let joined = into === 'new' ? null : openVehicleId(record.getState());
  for (const picked of picks) {
    if (picked.bundle === true) continue;
    // The vehicle of these files was left meanwhile: the rest of them must not turn up in another.
    if (joined !== null && openVehicleId(record.getState()) !== joined) sayCancelled(program, picked);
    else if (await openOne(program, picked, where, joined)) {
      where = 'open';
      joined = openVehicleId(record.getState());
    }
  }
  await checkBundles(
    program,
    picks.filter(({ bundle }) => bundle === true),
  );
  await refreshShelf(program);
}

/** Opens one file, whose first rows are shown while it is read. False where it did not become a capture. */
async function openOne(program: Program, picked: Picked, into: Into, vehicleId: string | null): Promise<boolean> {
  const over = showBeginning(program, picked);
  try {
    const outcome = await readPicked(program, picked, 'recalled', vehicleId);
    if (outcome.ok) return await adopt(program, outcome.value, into, over);
    if (outcome.problem.id === 'cancelled') sayCancelled(program, picked);
    else tell(program, outcome.problem);
    return false;
  } finally {
    over();
  }
}

/** Makes a read file a capture of its vehicle, and shows it. False where its vehicle could not be opened. */
async function adopt(program: Program, opened: ReadFile, into: Into, whenShown: () => void): Promise<boolean> {
  let taken: Promise<boolean> = Promise.resolve(false);
  // In the moment its vehicle opens: first rows in the place of their own capture would be laid out and drawn for nothing.
  const take = (): void => {
    taken = takeIn(program, opened, whenShown);
  };
  if (await withVehicle(program, opened, into, take)) return taken;
  void program.core.ask('close', { key: opened.summary.key });
  return false;
}

/** Puts a read file into the open vehicle. `whenShown` is done in the same moment in which its capture is shown. */
async function takeIn(program: Program, opened: ReadFile, whenShown: () => void): Promise<boolean> {
  const { record } = program;
  const vehicle = recordOf(record.getState());
  if (vehicle === null) return false;
  const known = Object.values(vehicle.captures).find((capture) => capture.sha256 === opened.summary.sha256);
  const file = known === undefined ? opened : await asRecorded(program, known, opened);
  if (file === null) return true;
  const captureId = known?.id ?? program.newId();
  if (known === undefined) record.getState().edit(addCapture(captureRef(program, captureId, file, vehicle)));
  const held = holdCapture(program, captureId, file);
  showCapture(program, captureId, file.summary);
  whenShown();
  program.notices
    .getState()
    .say(known === undefined ? `${file.picked.name} is open.` : `${known.name} was open already.`);
  if (file.question !== null) program.dialogs.getState().show({ kind: 'columns', captureId });
  await program.shell.rememberCapture({ token: file.picked.token, sha256: file.summary.sha256 });
  await held;
  selectFirstOffer(program, captureId);
  return true;
}

/** A file that is a capture of the record already is read with the choice that was made for it; null where it cannot be. */
async function asRecorded(program: Program, known: CaptureRef, opened: ReadFile): Promise<ReadFile | null> {
  const { columnChoice, id } = known;
  if (sameValue(columnChoice, opened.choice)) return opened;
  void program.core.ask('close', { key: opened.summary.key });
  const again = await readPicked(program, opened.picked, { choice: columnChoice });
  if (!again.ok) {
    if (again.problem.id !== 'cancelled') tell(program, again.problem);
    return null;
  }
  if (recordOf(program.record.getState())?.captures[id] !== undefined) return again.value;
  void program.core.ask('close', { key: again.value.summary.key });
  return null;
}

/**
 * Opens the vehicle a file belongs to (the open one, a new one, or the invented one of a sample drive), and does `whenOpen`
 * as soon as it is. False where it could not be opened.
 */
async function withVehicle(program: Program, file: ReadFile, into: Into, whenOpen: () => void): Promise<boolean> {
  await vehicleLeft(program);
  const { picked } = file;
  const open = recordOf(program.record.getState());
  const already = (): true => {
    whenOpen();
    return true;
  };
  if (picked.sample) {
    const { vehicleId } = sampleCapture(picked.name);
    if (open?.id === vehicleId) return already();
    const kept = await program.shell.listVehicles(null);
    if (kept.some((vehicle) => vehicle.id === vehicleId))
      return (await openVehicle(program, vehicleId, file)) && already();
    return openRecord(program, sampleVehicle(picked.name, program.clock.instant()), whenOpen);
  }
  if (open !== null && into === 'open' && !isSampleVehicle(open.id) && !program.record.getState().readOnly)
    return already();
  const name = stemOf(picked.name).slice(0, 200).trim() || 'New vehicle';
  const vehicle = newVehicle({ id: program.newId(), name, createdAt: program.clock.instant() });
  return openRecord(program, vehicle, whenOpen);
}

function captureRef(program: Program, id: string, file: ReadFile, vehicle: VehicleRecord): CaptureRef {
  const { picked, summary, choice } = file;
  return {
    id,
    kind: picked.sample ? sampleCapture(picked.name).kind : likelyKind(picked.name, vehicle),
    name: picked.name,
    bytes: summary.bytes,
    sha256: summary.sha256,
    addedAt: program.clock.instant(),
    durationS: summary.durationS,
    rows: summary.rows,
    columnChoice: choice,
    sample: picked.sample,
  };
}

/** A first guess that one click in the list corrects: the first capture of a vehicle is how it came in. */
export function likelyKind(fileName: string, vehicle: VehicleRecord): CaptureRef['kind'] {
  if (/after|repaired|fitted/i.test(fileName)) return 'after';
  if (/twin|healthy|known.?good/i.test(fileName)) return 'knownGood';
  const first = Object.values(vehicle.captures).every((capture) => capture.kind !== 'before');
  return first || /before/i.test(fileName) ? 'before' : 'other';
}

/** An offer is looked at before it is accepted: its finding stands in the margin from the first moment on. */
function selectFirstOffer(program: Program, captureId: string): void {
  const { workspace, record, captures } = program;
  const marked = Object.values(recordOf(record.getState())?.windows ?? {}).filter((one) => one.captureId === captureId);
  const offers = captures.getState().held[captureId]?.offers ?? [];
  if (marked.length > 0 || offers.length === 0) return;
  // The last hold: by then the engine is warmest.
  const index = Math.max(0, offers.map(({ kind }) => kind).lastIndexOf('hold'));
  const offer = offers[index];
  workspace.getState().select({ kind: 'offer', id: offerId(captureId, index) });
  if (offer !== undefined) workspace.getState().look(middleOf(offer), true);
}

/** A stretch short enough to see the single switches; the whole capture is one step back. */
function middleOf({ startS, endS }: Stretch): Stretch {
  const half = Math.min(READABLE_S, endS - startS) / 2;
  const middle = (startS + endS) / 2;
  return { startS: middle - half, endS: middle + half };
}

function sayCancelled({ notices }: Program, { name }: Picked): void {
  notices.getState().say(`Opening ${name} was cancelled.`);
}

function tell(program: Program, problem: Problem): void {
  program.notices.getState().tell('open', problem);
}
