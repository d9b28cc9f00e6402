import type { Capture } from '../../capture/capture.ts';
import type { Grams, Hertz, Seconds } from '../../units/quantities.ts';
import { asCapture } from '../asCapture.ts';
import { lightOff } from '../converter.ts';
import { createRandom, type Random } from '../random.ts';
import { type SimulatedDrive, simulateDrive } from '../simulate.ts';
import type { BankParameters, VehicleParameters } from '../vehicle.ts';
import { CLASSES, type ConverterClass, REFERENCE_LITRES } from './classes.ts';
import { type DrawnDrive, type DriveKind, drawDrive } from './drawDrive.ts';
import { drawInstrument, type InstrumentTier } from './drawInstrument.ts';
import { drawVehicle } from './drawVehicle.ts';
import { exchangedOf, FAULTS, type MisleadingFault } from './faults.ts';
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

/**
 * Strata, walked with steps that share no factor, so that every run of a few hundred cases holds all combinations in
 * their proportions: class (weights 5 5 3 7 of 20), a misleading fault in 2 of 5, instrument tier.
 */
const CLASS_WEIGHTS: Readonly<Record<ConverterClass, number>> = { fresh: 5, aged: 5, gray: 3, failed: 7 };
const CLASS_ROUND: readonly ConverterClass[] = CLASSES.flatMap((kind) =>
  Array.from({ length: CLASS_WEIGHTS[kind] }, () => kind),
);
const TIER_ROUND: readonly InstrumentTier[] = [
  'medium',
  'slow',
  'fast',
  'medium',
  'slow',
  'medium',
  'analogue',
  'slow',
  'medium',
  'fast',
  'slow',
  'medium',
  'crawling',
  'slow',
  'medium',
  'fast',
  'medium',
  'slow',
  'medium',
  'fast',
  'slow',
  'medium',
  'medium',
];

/**
 * Case `index` of a split: the same for ever. Any index from 0 works; the splits never share a seed.
 * @param mode how the car's parameters lie to the ranges of ranges.ts
 */
export function drawCase(index: number, split: Split, mode: DrawMode = 'inside'): PopulationCase {
  const seed = 1_000_003 * (split === 'calibration' ? 1 : 2) + 7_919 * MODE_SEED[mode];
  const random = createRandom(seed).fork(index);
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

interface CasePlan {
  readonly bank: 1 | 2;
  readonly kind: ConverterClass;
  readonly fault: MisleadingFault | null;
  readonly drive: DriveKind;
  readonly tier: InstrumentTier;
  readonly wideband: boolean;
  readonly twoBanks: boolean;
}

function planCase(index: number, random: Random): CasePlan {
  const kind = CLASS_ROUND[(index * 7) % CLASS_ROUND.length] ?? 'failed';
  const tier = TIER_ROUND[(index * 5) % TIER_ROUND.length] ?? 'medium';
  const faulty = (index * 3) % 5 < 2;
  const fault = faulty ? (FAULTS[(index * 11 + Math.floor(index / 15)) % FAULTS.length] ?? null) : null;
  const twoBanks = fault?.needs === 'twoBanks' || random.chance(0.15);
  const wideband =
    fault?.needs !== 'switching' && fault?.needs !== 'twoBanks' && tier !== 'analogue' && random.chance(0.22);
  return {
    bank: twoBanks && random.chance(0.5) ? 2 : 1,
    kind,
    fault,
    drive: driveFor(fault, random),
    tier,
    wideband,
    twoBanks,
  };
}

function driveFor(fault: MisleadingFault | null, random: Random): DriveKind {
  if (fault?.id === 'coldConverter') return 'coldHold';
  if (fault?.id === 'idleOnly') return 'idleOnly';
  const draw = random.next();
  return draw < 0.6 ? 'bayTest' : draw < 0.75 ? 'bareHold' : 'road';
}

function buildVehicle(plan: CasePlan, random: Random, mode: DrawMode): VehicleParameters {
  const other = random.pick(CLASSES);
  const classes = plan.twoBanks ? (plan.bank === 1 ? [plan.kind, other] : [other, plan.kind]) : [plan.kind];
  const vehicle = drawVehicle({ wideband: plan.wideband, twoBanks: plan.twoBanks, classes }, random, mode);
  const faults = random.fork(9);
  const bankAt = plan.bank - 1;
  const put = (bank: BankParameters, k: number) => (k === bankAt && plan.fault ? plan.fault.apply(bank, faults) : bank);
  const second = random.chance(0.08);
  const banks = vehicle.banks
    .map(put)
    .map((bank) =>
      second ? { ...bank, secondBrick: { ...bank.converter, capacityG: bank.converter.capacityG } } : bank,
    );
  return { ...vehicle, banks, exchanged: exchangedOf(plan.fault?.id ?? null) };
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

/** Codes as people bring them: P0420 or P0430 with most cars, whatever is true; the fault's own in a third of cases. */
function drawCodes(plan: CasePlan, random: Random): string[] {
  const codes: string[] = [];
  if (random.chance(0.7)) codes.push(plan.bank === 2 ? 'P0430' : 'P0420');
  const own = plan.fault?.codes ?? [];
  const misfire = plan.fault?.id === 'misfire';
  if (own.length > 0 && random.chance(misfire ? 0.7 : 0.33)) codes.push(bankCode(random.pick(own), plan.bank));
  return codes;
}

/** The same fault on bank 2 has its own number (SAE J2012, check 1.52). */
const SECOND_BANK: Readonly<Record<string, string>> = {
  P0131: 'P0151',
  P0133: 'P0153',
  P0137: 'P0157',
  P0139: 'P0159',
  P0140: 'P0160',
  P0171: 'P0174',
  P0172: 'P0175',
};

function bankCode(code: string, bank: 1 | 2): string {
  return bank === 2 ? (SECOND_BANK[code] ?? code) : code;
}
