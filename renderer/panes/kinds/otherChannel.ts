import { niceRange } from '../../plot/valueTicks.ts';
import type { PaneKind } from '../paneKind.ts';

/** A channel without a role: its own name, its own unit, its own extent. */
export const otherChannel: PaneKind = {
  id: 'otherChannel',
  words: 'Other channel',
  roles: ['other'],
  channelWords: {},
  guides: [],
  quantityRange: (low, high) => niceRange(low, high),
};
