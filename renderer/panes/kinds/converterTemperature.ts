import { niceRange } from '../../plot/valueTicks.ts';
import type { PaneKind } from '../paneKind.ts';

/** Temperature of the converter as the engine computer reports it: measured in few vehicles, computed in most. */
export const converterTemperature: PaneKind = {
  id: 'converterTemperature',
  words: 'Converter temperature',
  roles: ['catalystTemp'],
  channelWords: {},
  guides: [],
  quantityRange: (low, high) => niceRange(Math.min(low, 200), Math.max(high, 600)),
};
