// A drive of the simulation with one converter of a chosen capacity, recorded by a chosen instrument: what the tests of the
// model fit start from. The truth is known because it was put in.

import type { Capture } from '../../core/capture/capture.ts';
import { findChannel } from '../../core/capture/capture.ts';
import { cutWindow } from '../../core/measures/windowData.ts';
import type { FitData } from '../../core/model/fit.ts';
import { asCapture } from '../../core/simulation/asCapture.ts';
import { type ConverterParameters, lightOff } from '../../core/simulation/converter.ts';
import { SOUND_BANK, SOUND_VEHICLE } from '../../core/simulation/defaults.ts';
import { layDrive } from '../../core/simulation/driveScript.ts';
import { logDrive } from '../../core/simulation/instruments/logger.ts';
import { pollDrive } from '../../core/simulation/instruments/polled.ts';
import { createRandom } from '../../core/simulation/random.ts';
import { COOLANT, frontVolts, LOAD, MAF, RPM, rearVolts, shortTrim } from '../../core/simulation/signals.ts';
import { simulateDrive } from '../../core/simulation/simulate.ts';
import type { WindowKind } from '../../core/windows/window.ts';

/** Second at which the hold begins, and at which it ends with a fuel cut. */
const HOLD_FROM_S = 8;
const HOLD_TO_S = 68;

const SCRIPT = layDrive([
  { does: 'hold', seconds: HOLD_TO_S, rpm: 2250 },
  { does: 'idle', seconds: 20 },
  { does: 'coast', fromRpm: 3400, heldS: 3 },
  { does: 'idle', seconds: 20 },
]);

export interface FittedDrive {
  readonly capture: Capture;
  /** Capacity that worked at the temperature of the hold, g. */
  readonly trueG: number;
}

/**
 * Two litres, warm, a hold of a minute and two fuel cuts; `hz` values a second of each sensor, polled below 6. `kind`
 * says how the converter differs from a usual one.
 */
export function fittedDrive(
  capacityG: number,
  hz: number,
  seed = 1,
  kind: Partial<ConverterParameters> = {},
): FittedDrive {
  const bank = {
    ...SOUND_BANK,
    converter: { ...SOUND_BANK.converter, ...kind, capacityG },
    exhaust: { ...SOUND_BANK.exhaust, startC: 520 },
  };
  const random = createRandom(seed);
  const drive = simulateDrive({ ...SOUND_VEHICLE, banks: [bank] }, SCRIPT, 89, random.fork(1), 0.01);
  const signals = [RPM, frontVolts(1), rearVolts(1), COOLANT, MAF, LOAD, shortTrim(1)];
  const recording =
    hz < 6
      ? pollDrive(drive, signals, { ...POLLED, answersPerS: hz * signals.length }, random.fork(2))
      : logDrive(drive, signals, { ...LOGGED, rateHz: hz, sensorHz: hz, otherHz: hz }, random.fork(2));
  const brickC = drive.banks[0]?.brickC[Math.round(40 / drive.stepS)] ?? 0;
  return { capture: asCapture(recording, 'fitted'), trueG: capacityG * lightOff(bank.converter, brickC) };
}

const POLLED = { answersPerS: 1, jitter: 0.3, latencyS: 0.05, lost: 0, pauses: 0, pauseS: 0 };
const LOGGED = { rateHz: 1, jitterS: 0, sensorHz: 1, otherHz: 1, latencyS: 0.02, lost: 0 };

/** The hold of such a drive, or a stretch of another kind in it. */
export function holdOf(capture: Capture, kind: WindowKind = 'hold', startS = HOLD_FROM_S, endS = HOLD_TO_S): FitData {
  return cutWindow(capture, { startS, endS, bank: 1, kind, origin: 'byHand' }, 1);
}

/** The same capture without the channels of one role. */
export function without(capture: Capture, role: string): Capture {
  return { ...capture, channels: capture.channels.filter((channel) => channel.role !== role) };
}

/** The front channel of bank 1; the drives here always have one. */
export function frontOf(capture: Capture) {
  const front = findChannel(capture, 'upstreamO2', 1);
  if (!front) throw new Error('The drive has no front sensor.');
  return front;
}
