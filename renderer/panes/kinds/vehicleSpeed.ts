import { niceRange } from '../../plot/valueTicks.ts';
import type { PaneKind } from '../paneKind.ts';

/** Speed over ground. */
export const vehicleSpeed: PaneKind = {
  id: 'vehicleSpeed',
  words: 'Vehicle speed',
  roles: ['speed'],
  channelWords: {},
  guides: [],
  quantityRange: (_low, high) => niceRange(0, Math.max(high, 20)),
};
