import type { PaneKind } from '../paneKind.ts';

/** Opening of the throttle plate. */
export const throttle: PaneKind = {
  id: 'throttle',
  words: 'Throttle position',
  roles: ['throttle'],
  channelWords: {},
  guides: [],
  quantityRange: (low, high) => [Math.min(0, low), Math.max(100, high)],
};
