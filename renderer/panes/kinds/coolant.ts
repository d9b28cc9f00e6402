import { niceRange } from '../../plot/valueTicks.ts';
import type { PaneKind } from '../paneKind.ts';

/** 80 °C as the line above which an engine counts as warm is common practice, no source. */
export const coolant: PaneKind = {
  id: 'coolant',
  words: 'Coolant temperature',
  roles: ['coolant'],
  channelWords: {},
  guides: [{ kind: 'line', at: 80, words: 'warm engine' }],
  quantityRange: (low, high) => niceRange(Math.min(low, 60), Math.max(high, 100)),
};
