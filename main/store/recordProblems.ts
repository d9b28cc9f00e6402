// What the store may have to tell about a vehicle's record.

import type { Problem } from '../../core/reading/problem.ts';

const WHERE = 'the vehicle’s record';

export const damaged = (): Problem => ({
  id: 'damagedRecord',
  what: 'The newest save of this vehicle is damaged.',
  where: WHERE,
  doNext: 'Choose one of its earlier saves; the damaged one is kept aside.',
});

export const missing = (): Problem => ({
  id: 'missingRecord',
  what: 'The newest save of this vehicle is not there.',
  where: WHERE,
  doNext: 'Choose one of its earlier saves, or another vehicle.',
});

export const notThere = (): Problem => ({
  id: 'missingSave',
  what: 'This earlier save is not there any more, or is damaged.',
  where: WHERE,
  doNext: 'Choose another one.',
});

export const madeByNewer = (version: number): Problem => ({
  id: 'newerVersion',
  what: `This vehicle was saved by a newer version of the program (form ${version}), so it can be read here and not changed.`,
  where: WHERE,
  doNext: 'Use the newer version to change it.',
});

export const changedOutside = (): Problem => ({
  id: 'changedOutside',
  what: 'Something else has changed this vehicle since it was opened here.',
  where: WHERE,
  doNext: 'Both are kept: load the vehicle again to see the other one; yours is among its earlier saves.',
});

export const unreadable = (): Problem => ({
  id: 'unreadableRecord',
  what: 'The disk does not give this vehicle’s record out.',
  where: WHERE,
  doNext: 'Look whether its disk is there and may be read, then open the vehicle again.',
});
