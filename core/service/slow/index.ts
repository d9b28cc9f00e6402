import { compare } from './compare.ts';
import { describe } from './describe.ts';
import { modelTraces } from './modelTraces.ts';
import { scoreVehicle } from './scoreVehicle.ts';
import { scoreWindow } from './scoreWindow.ts';
import type { SlowAnswer } from './slowAnswer.ts';
import { suggest } from './suggest.ts';

type SlowName = 'describe' | 'suggest' | 'scoreWindow' | 'scoreVehicle' | 'modelTraces' | 'compare';

/** The questions of core/bridge/coreMessages.ts that may take longer than a frame, with their answers. */
export const SLOW_ANSWERS: { readonly [Name in SlowName]: SlowAnswer<Name> } = {
  describe,
  suggest,
  scoreWindow,
  scoreVehicle,
  modelTraces,
  compare,
};
