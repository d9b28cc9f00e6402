import { niceRange } from '../../plot/valueTicks.ts';
import type { PaneKind } from '../paneKind.ts';

/** Correction of the injected fuel, equal room for both signs. */
export const fuelTrims: PaneKind = {
  id: 'fuelTrims',
  words: 'Fuel trims',
  roles: ['stft', 'ltft'],
  channelWords: { stft: 'Short-term', ltft: 'Long-term' },
  guides: [],
  quantityRange: (low, high) => symmetric(Math.max(10, -low, high)),
};

function symmetric(most: number): readonly [number, number] {
  const [, high] = niceRange(0, most);
  return [-high, high];
}
