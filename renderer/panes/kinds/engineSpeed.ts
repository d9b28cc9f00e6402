import { niceRange } from '../../plot/valueTicks.ts';
import type { PaneKind } from '../paneKind.ts';

/** Speed of the crankshaft. The band in which a hold is made is common practice, no source. */
export const engineSpeed: PaneKind = {
  id: 'engineSpeed',
  words: 'Engine speed',
  roles: ['rpm'],
  channelWords: {},
  guides: [{ kind: 'band', low: 2000, high: 2500, words: 'hold band' }],
  quantityRange: (_low, high) => niceRange(0, Math.max(high, 3000)),
};
