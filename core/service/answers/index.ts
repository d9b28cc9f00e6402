import type { CoreQuestionName } from '../../bridge/coreMessages.ts';
import type { Answer } from './answer.ts';
import { close } from './close.ts';
import { compare } from './compare.ts';
import { describe } from './describe.ts';
import { modelTraces } from './modelTraces.ts';
import { nextStop } from './nextStop.ts';
import { open } from './open.ts';
import { openBeginning } from './openBeginning.ts';
import { scoreVehicle } from './scoreVehicle.ts';
import { scoreWindow } from './scoreWindow.ts';
import { suggest } from './suggest.ts';
import { valuesAt } from './valuesAt.ts';
import { views } from './views.ts';

/** Every question of core/bridge/coreMessages.ts with its answer. */
export const ANSWERS: { readonly [Name in CoreQuestionName]: Answer<Name> } = {
  open,
  openBeginning,
  close,
  views,
  valuesAt,
  nextStop,
  describe,
  suggest,
  scoreWindow,
  scoreVehicle,
  modelTraces,
  compare,
};
