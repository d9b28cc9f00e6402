import type { Capture } from '../../capture/capture.ts';
import type { Grams, Hertz, Seconds } from '../../units/quantities.ts';
import { asCapture } from '../asCapture.ts';
import { lightOff } from '../converter.ts';
import { createRandom, type Random } from '../random.ts';
import { type SimulatedDrive, simulateDrive } from '../simulate.ts';
import { buildVehicle } from './buildVehicle.ts';
import { type ConverterClass, REFERENCE_LITRES } from './classes.ts';
import { drawCodes } from './drawCodes.ts';
import { type DrawnDrive, type DriveKind, drawDrive } from './drawDrive.ts';
import { drawInstrument, type InstrumentTier } from './drawInstrument.ts';
import type { MisleadingFault } from './faults/misleadingFault.ts';
import { type CasePlan, planCase } from './planCase.ts';
import type { DrawMode } from './ranges.ts';

/** Which part of the population: what calibrates never tests. */
export type Split = 'calibration' | 'test';

/** Everything that is true about a case; what a scorer must find out. */
export interface CaseTruth {
  readonly index: number;
  readonly split: Split;
  readonly mode: DrawMode;
  /** The bank that is judged. */
  readonly bank: 1 | 2;
  readonly kind: ConverterClass;
  /** Capacity ahead of the rear sensor that worked at the temperature of the judged stretch. */
  readonly capacityG: Grams;
  /** When the judged hold or cruise ran; null for an idle capture. */
  readonly judged: { readonly startS: Seconds; readonly endS: Seconds } | null;
  readonly fault: MisleadingFault | null;
  readonly drive: DriveKind;
  /** Engine and converter warm, a raised speed held long enough. */
  readonly properHold: boolean;
  readonly tier: InstrumentTier;
  readonly sensorHz: Hertz;
  readonly wideband: boolean;
  /** Engine behind this bank. */
  readonly bankLitres: number;
  /** Capacity as it would be for a two-litre bank: what classes are said by. */
  readonly capacityFor2L: Grams;
}

/** A capture with codes, as a person would hand it in, and the truth behind it. */
export interface PopulationCase {
  readonly truth: CaseTruth;
  readonly capture: Capture;
  readonly troubleCodes: readonly string[];
}

/** A seed of its own for each way of drawing. */
const MODE_SEED: Readonly<Record<DrawMode, number>> = { inside: 0, outside: 1, far: 2 };

/** Cases in one split of the whole population. */
export const SPLIT_SIZE = 3200;

function randomOf(index: number, split: Split, mode: DrawMode): Random {
  const seed = 1_000_003 * (split === 'calibration' ? 1 : 2) + 7_919 * MODE_SEED[mode];
  return createRandom(seed).fork(index);
}

/** What case `index` of a split is about, for whoever needs only some of them: all of it is known before any drive. */
export function planOf(index: number, split: Split, mode: DrawMode = 'inside'): CasePlan {
  return planCase(index, randomOf(index, split, mode).fork(1));
}

/**
 * Case `index` of a split: the same for ever. Any index from 0 works; the splits never share a seed.
 * @param mode how the car's parameters lie to the ranges of ranges.ts
 */
export function drawCase(index: number, split: Split, mode: DrawMode = 'inside'): PopulationCase {
  const random = randomOf(index, split, mode);
  const plan = planCase(index, random.fork(1));
  const vehicle = buildVehicle(plan, random.fork(2), mode);
  const drive = drawDrive(plan.drive, random.fork(3));
  const instrument = drawInstrument(plan.tier, plan.wideband, vehicle.banks.length, random.fork(4));
  const simulated = simulateDrive(vehicle, drive.script, drive.startCoolantC, random.fork(5), instrument.stepS);
  const recording = instrument.record(simulated, random.fork(6));
  const capacityG = judgedCapacity(simulated, plan.bank, drive);
  const bankLitres = vehicle.litres / vehicle.banks.length;
  const truth: CaseTruth = {
    ...plan,
    index,
    split,
    mode,
    capacityG,
    capacityFor2L: (capacityG * REFERENCE_LITRES) / bankLitres,
    judged: drive.judged,
    properHold: drive.properHold && plan.fault?.id !== 'coldConverter',
    sensorHz: instrument.sensorHz,
    bankLitres,
  };
  return { truth, capture: asCapture(recording, `case-${index}`), troubleCodes: drawCodes(plan, random.fork(8)) };
}

/** Capacity that worked at the temperature of the judged stretch: what a measurement there can find. */
function judgedCapacity(drive: SimulatedDrive, bank: 1 | 2, { judged }: DrawnDrive): Grams {
  const truth = drive.banks[bank - 1];
  const converter = drive.vehicle.banks[bank - 1]?.converter;
  if (!truth || !converter) return 0;
  const middleS = judged ? (judged.startS + judged.endS) / 2 : drive.length * drive.stepS * 0.5;
  const brickC = truth.brickC[Math.min(drive.length - 1, Math.round(middleS / drive.stepS))] ?? 0;
  return converter.capacityG * lightOff(converter, brickC);
}
