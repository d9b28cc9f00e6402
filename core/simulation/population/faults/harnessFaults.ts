import type { MisleadingFault } from './misleadingFault.ts';

/** Connectors that were exchanged; the whole vehicle carries them (buildVehicle.ts). */
export const HARNESS_FAULTS: readonly MisleadingFault[] = [
  {
    id: 'frontRearExchanged',
    words: 'connectors of front and rear sensor exchanged',
    blockers: ['sensorsExchanged'],
    codes: [],
    needs: 'switching',
    apply: (bank) => bank,
  },
  {
    id: 'banksExchanged',
    words: 'front sensors of the two banks exchanged',
    blockers: ['sensorsExchanged'],
    codes: ['P0040'],
    needs: 'twoBanks',
    apply: (bank) => bank,
  },
];
