// What the store may have to tell about a vehicle's record.

import { homedir } from 'node:os';
import { basename, dirname, join, relative, sep } from 'node:path';
import type { Problem } from '../../core/reading/problem.ts';
import { RECORD_PLACE, type VehicleFolder } from './vehicleFolder.ts';

/** A damaged newest save, with so many earlier ones to choose from. */
export const damaged = (folder: VehicleFolder, earlier: number): Problem =>
  earlier === 0
    ? lost(folder)
    : {
        id: 'damagedRecord',
        what: 'The newest save of this vehicle is damaged.',
        where: RECORD_PLACE,
        doNext: 'Choose one of its earlier saves; the damaged one is kept aside.',
      };

export const missing = (): Problem => ({
  id: 'missingRecord',
  what: 'The newest save of this vehicle is not there.',
  where: RECORD_PLACE,
  doNext: 'Choose one of its earlier saves, or another vehicle.',
});

/** Damaged without a save to go back to. Here alone the place is told as it lies on disk: only by hand can it be put right. */
export const lost = (folder: VehicleFolder): Problem => ({
  id: 'lostRecord',
  what: 'This vehicle’s record is damaged, and so is every earlier save of it.',
  where: knownPlace(folder.record),
  doNext:
    'Nothing was removed. Put this file back from a backup, with the folder "generations" beside it, which holds the earlier saves; or open a bundle of this vehicle that you have handed out.',
});

export const refusedByDisk = (folder: VehicleFolder): Problem => ({
  ...unreadable(),
  where: knownPlace(folder.record),
});

/** A place from the person's own folder on, "~/.config/…"; elsewhere no more than the names that tell it apart. */
function knownPlace(path: string): string {
  const fromHome = relative(homedir(), path);
  const inHome = fromHome !== '' && !fromHome.startsWith('..') && fromHome !== path;
  return inHome
    ? `~${sep}${fromHome}`
    : join(basename(dirname(dirname(path))), basename(dirname(path)), basename(path));
}

export const notThere = (): Problem => ({
  id: 'missingSave',
  what: 'This earlier save is not there any more, or is damaged.',
  where: RECORD_PLACE,
  doNext: 'Choose another one.',
});

export const madeByNewer = (): Problem => ({
  id: 'newerVersion',
  what: 'A newer version of the program saved this vehicle, so it can be read here and not changed.',
  where: RECORD_PLACE,
  doNext: 'Use the newer version to change it.',
});

export const changedOutside = (): Problem => ({
  id: 'changedOutside',
  what: 'Something else has changed this vehicle since it was opened here.',
  where: RECORD_PLACE,
  doNext: 'Both are kept: load the vehicle again to see the other one; yours is among its earlier saves.',
});

export const unreadable = (): Problem => ({
  id: 'unreadableRecord',
  what: 'The disk does not give this vehicle’s record out.',
  where: RECORD_PLACE,
  doNext: 'Look whether its disk is there and may be read, then open the vehicle again.',
});

/** Why a save was not tried. */
export class Refused extends Error {
  readonly problem: Problem;
  constructor(problem: Problem) {
    super(problem.what);
    this.problem = problem;
  }
}
