import { niceRange } from '../../plot/valueTicks.ts';
import type { PaneKind } from '../paneKind.ts';

/** Air that the engine takes in. */
export const airFlow: PaneKind = {
  id: 'airFlow',
  words: 'Mass air flow',
  roles: ['maf'],
  channelWords: {},
  guides: [],
  quantityRange: (_low, high) => niceRange(0, Math.max(high, 10)),
};
