import { niceRange } from '../../plot/valueTicks.ts';
import type { PaneKind } from '../paneKind.ts';

/** Temperature of the air before the engine. */
export const intakeAir: PaneKind = {
  id: 'intakeAir',
  words: 'Intake air temperature',
  roles: ['intakeAir'],
  channelWords: {},
  guides: [],
  quantityRange: (low, high) => niceRange(Math.min(low, 0), Math.max(high, 50)),
};
