// Bundles from a colleague: checked, looked at, taken in.

import type { Picked, ReceivedBundle } from '../../core/bridge/shellMessages.ts';
import { continuingOpinions } from '../../core/opinions/continuing.ts';
import type { Problem } from '../../core/reading/problem.ts';
import type { Program } from '../program/program.ts';
import { wholeRecordOf } from '../state/recordStore.ts';
import { openVehicle } from './openVehicle.ts';
import { refreshShelf } from './refreshShelf.ts';
import { sha256Of } from './sha256.ts';

/** Checks bundles one after another and shows what is in those that are as they were made; the others say why not. */
export async function checkBundles(program: Program, picks: readonly Picked[]): Promise<void> {
  const received: ReceivedBundle[] = [];
  for (const picked of picks) {
    const bundle = await checkOne(program, picked);
    if (bundle !== null) received.push(bundle);
  }
  if (received.length > 0) showReceived(program, received);
}

/** Shows the first of these bundles, or closes the dialog where none is left. */
export function showReceived({ dialogs }: Program, bundles: readonly ReceivedBundle[]): void {
  const [first, ...others] = bundles;
  if (first === undefined) dialogs.getState().close();
  else dialogs.getState().show({ kind: 'received', bundles: [first, ...others] });
}

/**
 * Takes a bundle in and opens the vehicle that it has become, to be read blind first or with all it holds. False where it
 * could not be, which is told.
 */
export async function takeBundle(program: Program, bundle: ReceivedBundle, blind: boolean): Promise<boolean> {
  const { shell, notices } = program;
  const { token, manifestSha256, sha256 } = bundle;
  notices.getState().clear('open');
  const taken = await shell.takeBundle({ token, manifestSha256, blind });
  if (!taken.ok) {
    notices.getState().tell('open', taken.problem);
    return false;
  }
  await shell.rememberCapture({ token, sha256 });
  if (!(await openVehicle(program, taken.vehicleId))) return false;
  notices.getState().say(`${bundle.name} was taken in.`);
  await refreshShelf(program);
  return true;
}

/**
 * Takes over only what was signed in a bundle since, into the vehicle here, and opens it. False where it could not be, which is
 * told.
 */
export async function takeOpinions(program: Program, bundle: ReceivedBundle): Promise<boolean> {
  const { record, notices, saver } = program;
  notices.getState().clear('open');
  const open = () => wholeRecordOf(record.getState());
  if (open()?.id !== bundle.vehicleId && !(await openVehicle(program, bundle.vehicleId))) return false;
  const here = open();
  if (here === null) return false;
  const opinions = { ...Object.fromEntries(bundle.newOpinions.map((entry) => [entry.id, entry])), ...here.opinions };
  const entries = await continuingOpinions({ opinions }, here, sha256Of);
  // Somebody may have signed here since the bundle was looked at: then it no longer continues the chain.
  const stands = entries.length === bundle.newOpinions.length && open()?.opinions === here.opinions;
  if (!stands || record.getState().readOnly) {
    notices.getState().tell('open', notContinued(bundle));
    return false;
  }
  for (const entry of entries) record.getState().sign(entry);
  notices.getState().say(`What was signed in ${bundle.name} was taken over. Undo goes no further back than this.`);
  return saver.flush();
}

const notContinued = ({ name }: ReceivedBundle): Problem => ({
  id: 'bundle.notContinued',
  what: 'What was signed in this bundle does not continue what is signed here, or this vehicle can only be read.',
  where: name,
  doNext: 'Take the bundle in beside your vehicle: both are kept, with all that was signed.',
});

async function checkOne(program: Program, { token, name, bytes }: Picked): Promise<ReceivedBundle | null> {
  const { shell, captures, clock, notices } = program;
  const id = program.newId();
  const cancel = () => void shell.cancelBundle(null);
  captures.getState().addJob({ id, name, bytes, startedAt: clock.now(), progress: null, checking: true, cancel });
  try {
    const checked = await shell.checkBundle({ token });
    if (checked.ok) return checked.bundle;
    if (checked.problem.id === 'cancelled') notices.getState().say(`Opening ${name} was cancelled.`);
    else notices.getState().tell('open', checked.problem);
    return null;
  } finally {
    captures.getState().endJob(id);
  }
}
