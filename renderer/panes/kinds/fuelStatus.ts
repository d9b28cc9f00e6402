import type { PaneKind } from '../paneKind.ts';

/** Open or closed loop, as the bits of SAE J1979 PID 03: 1 open because cold, 2 closed, 4 open by load, 8 and 16 faults. */
export const fuelStatus: PaneKind = {
  id: 'fuelStatus',
  words: 'Fuel system status',
  roles: ['fuelStatus'],
  channelWords: {},
  guides: [],
  quantityRange: (_low, high) => [0, Math.max(16, high)],
};
