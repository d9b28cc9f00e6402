import type { PaneKind } from '../paneKind.ts';

/** Share of the air that the engine could take in. */
export const calculatedLoad: PaneKind = {
  id: 'calculatedLoad',
  words: 'Calculated load',
  roles: ['load'],
  channelWords: {},
  guides: [],
  quantityRange: (_low, high) => [0, Math.max(100, high)],
};
