import type { Hertz } from '../../units/quantities.ts';
import { recordAnalogue } from '../instruments/analogue.ts';
import { logDrive } from '../instruments/logger.ts';
import { pollDrive } from '../instruments/polled.ts';
import type { Recording } from '../instruments/recording.ts';
import type { Random } from '../random.ts';
import {
  COOLANT,
  frontLambda,
  frontVolts,
  fuelStatus,
  LOAD,
  longTrim,
  MAF,
  RPM,
  rearVolts,
  type Signal,
  SPEED,
  shortTrim,
  THROTTLE,
  thirdVolts,
} from '../signals.ts';
import type { SimulatedDrive } from '../simulate.ts';

/** How often each oxygen sensor is seen: under 1, 1 to 5, 8 to 20, 25 to 100, 1000 times a second. */
export const INSTRUMENT_TIERS = ['crawling', 'slow', 'medium', 'fast', 'analogue'] as const;
export type InstrumentTier = (typeof INSTRUMENT_TIERS)[number];

export interface Instrument {
  readonly tier: InstrumentTier;
  /** Values a second of each oxygen sensor. */
  readonly sensorHz: Hertz;
  /** Step of the simulation it needs, s. */
  readonly stepS: number;
  record(drive: SimulatedDrive, random: Random): Recording;
}

/** An instrument of a tier, with its own rate, jitter, choice of channels and habits. */
export function drawInstrument(tier: InstrumentTier, wideband: boolean, banks: number, random: Random): Instrument {
  const choice = random.next();
  const signals = (drive: SimulatedDrive) => chooseSignals(drive, wideband, banks, tier === 'analogue' ? 0 : choice);
  const sensorHz = rateOf(tier, random);
  const style = random.next();
  return {
    tier,
    sensorHz,
    stepS: tier === 'analogue' ? 0.002 : tier === 'fast' ? 0.005 : 0.01,
    record: (drive, own) => {
      const wanted = signals(drive);
      if (tier === 'analogue') return analogue(drive, wanted, own);
      if (tier === 'fast' || (tier === 'medium' && style < 0.5)) return logged(drive, wanted, sensorHz, own);
      return polled(drive, wanted, sensorHz, style < 0.75, own);
    },
  };
}

function rateOf(tier: InstrumentTier, random: Random): Hertz {
  switch (tier) {
    case 'crawling':
      return random.logBetween(0.3, 0.95);
    case 'slow':
      return random.logBetween(1, 5);
    case 'medium':
      return random.logBetween(8, 20);
    case 'fast':
      return random.logBetween(25, 100);
    case 'analogue':
      return 1000;
  }
}

/** Sensors always; the rest as the person chose: few items for speed, or all of them. */
function chooseSignals(drive: SimulatedDrive, wideband: boolean, banks: number, choice: number): Signal[] {
  const signals: Signal[] = [RPM];
  for (let bank = 1; bank <= banks; bank++) {
    const which = bank === 1 ? 1 : 2;
    signals.push(wideband ? frontLambda(which) : frontVolts(which), rearVolts(which));
    if (drive.vehicle.banks[bank - 1]?.secondBrick) signals.push(thirdVolts(which));
    if (choice > 0.2) signals.push(shortTrim(which));
    if (choice > 0.35) signals.push(longTrim(which));
    if (choice > 0.7) signals.push(fuelStatus(which));
  }
  if (choice > 0) signals.push(COOLANT);
  if (choice > 0.25) signals.push(MAF);
  if (choice > 0.5) signals.push(LOAD, SPEED);
  if (choice > 0.75) signals.push(THROTTLE);
  return signals;
}

function analogue(drive: SimulatedDrive, signals: readonly Signal[], random: Random): Recording {
  const stepV = random.pick([0.001, 1 / 1023, 5 / 1023]);
  const options = { rateHz: 1000, stepV, noiseV: random.logBetween(0.002, 0.012), spikesPerS: 1.5, spikeV: 0.1 };
  return recordAnalogue(drive, signals, options, random);
}

function logged(drive: SimulatedDrive, signals: readonly Signal[], sensorHz: Hertz, random: Random): Recording {
  const rateHz = sensorHz * random.pick([1, 1, 2]);
  const options = {
    rateHz,
    jitterS: random.between(0, 0.15) / rateHz,
    sensorHz,
    otherHz: Math.min(rateHz, random.pick([2, 5, 10, 100])),
    latencyS: random.between(0, 0.08),
    lost: random.pick([0, 0, 0.002, 0.01]),
  };
  return logDrive(drive, signals, options, random);
}

function polled(
  drive: SimulatedDrive,
  signals: readonly Signal[],
  sensorHz: Hertz,
  oneRow: boolean,
  random: Random,
): Recording {
  const options = {
    answersPerS: sensorHz * signals.length,
    jitter: random.between(0.03, 0.35),
    latencyS: random.between(0.01, 0.12),
    lost: random.pick([0, 0, 0.003, 0.02]),
    pauses: random.pick([0, 0, 0.01, 0.03]),
    pauseS: random.between(0.3, 1.5),
    ownTimes: !oneRow,
  };
  return pollDrive(drive, signals, options, random);
}
