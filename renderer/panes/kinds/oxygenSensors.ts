import type { PaneKind } from '../paneKind.ts';

/** Voltage of zirconia sensors, front and rear over each other. 0.45 V as the switch point is common practice, no source. */
export const oxygenSensors: PaneKind = {
  id: 'oxygenSensors',
  words: 'Oxygen sensors',
  roles: ['upstreamO2', 'downstreamO2'],
  channelWords: { upstreamO2: 'Upstream', downstreamO2: 'Downstream' },
  guides: [{ kind: 'line', at: 0.45, words: 'switch point' }],
  // 0 to 1 V as the trade reads it, with a hair beside it; wider only where the capture itself is.
  quantityRange: (low, high) => [
    low < -0.04 ? Math.max(-0.5, low) - 0.04 : -0.04,
    high > 1.04 ? Math.min(1.6, high) + 0.04 : 1.04,
  ],
};
