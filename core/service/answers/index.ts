import type { CoreQuestionName } from '../../bridge/coreMessages.ts';
import type { SlowQuestionName } from '../slowAnswers.ts';
import type { Answer } from './answer.ts';
import { close } from './close.ts';
import { nextStop } from './nextStop.ts';
import { open } from './open.ts';
import { openBeginning } from './openBeginning.ts';
import { valuesAt } from './valuesAt.ts';
import { views } from './views.ts';

export type QuickQuestionName = Exclude<CoreQuestionName, SlowQuestionName>;

/** The questions of core/bridge/coreMessages.ts that nobody should wait for, with their answers. */
export const ANSWERS: { readonly [Name in QuickQuestionName]: Answer<Name> } = {
  open,
  openBeginning,
  close,
  views,
  valuesAt,
  nextStop,
};
