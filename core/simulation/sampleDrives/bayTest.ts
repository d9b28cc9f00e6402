import type { DriveStep } from '../driveScript.ts';

/** The usual test in the bay: end of warm-up, converter heated, a hold, snaps, coast-downs with fuel cut, idle. */
export const BAY_TEST: readonly DriveStep[] = [
  { does: 'idle', seconds: 45 },
  { does: 'hold', seconds: 130, rpm: 2500 },
  { does: 'idle', seconds: 30 },
  { does: 'hold', seconds: 105, rpm: 2250 },
  { does: 'idle', seconds: 12 },
  { does: 'snap', peakRpm: 4200 },
  { does: 'idle', seconds: 11 },
  { does: 'snap', peakRpm: 4000 },
  { does: 'idle', seconds: 13 },
  { does: 'coast', fromRpm: 3400, heldS: 4 },
  { does: 'idle', seconds: 18 },
  { does: 'coast', fromRpm: 3300, heldS: 5 },
  { does: 'idle', seconds: 60 },
];

/** The same for whoever has less patience, or a slower hand. */
export const LONGER_BAY_TEST: readonly DriveStep[] = [
  { does: 'idle', seconds: 60 },
  { does: 'hold', seconds: 150, rpm: 2400 },
  { does: 'idle', seconds: 40 },
  { does: 'hold', seconds: 120, rpm: 2150 },
  { does: 'idle', seconds: 20 },
  { does: 'snap', peakRpm: 3900 },
  { does: 'idle', seconds: 15 },
  { does: 'coast', fromRpm: 3500, heldS: 6 },
  { does: 'idle', seconds: 25 },
  { does: 'coast', fromRpm: 3200, heldS: 5 },
  { does: 'idle', seconds: 70 },
];
