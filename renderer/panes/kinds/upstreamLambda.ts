import { niceRange } from '../../plot/valueTicks.ts';
import type { PaneKind } from '../paneKind.ts';

/** A wideband front sensor. Lambda 1 is the stoichiometric mixture by definition. */
export const upstreamLambda: PaneKind = {
  id: 'upstreamLambda',
  words: 'Upstream lambda',
  roles: ['upstreamLambda'],
  channelWords: {},
  guides: [{ kind: 'line', at: 1, words: 'stoichiometric' }],
  quantityRange: (low, high) => niceRange(Math.min(low, 0.9), Math.max(high, 1.1)),
};
