import type { Random } from '../random.ts';
import { CLASSES, type ConverterClass } from './classes.ts';
import type { DriveKind } from './drawDrive.ts';
import type { InstrumentTier } from './drawInstrument.ts';
import { FAULTS } from './faults/index.ts';
import type { MisleadingFault } from './faults/misleadingFault.ts';

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

/** What a case is about, before anything is drawn for it. */
export interface CasePlan {
  readonly bank: 1 | 2;
  readonly kind: ConverterClass;
  readonly fault: MisleadingFault | null;
  readonly drive: DriveKind;
  readonly tier: InstrumentTier;
  readonly wideband: boolean;
  readonly twoBanks: boolean;
}

/** The plan of case `index`: its stratum by the index alone, what is left by chance. */
export function planCase(index: number, random: Random): CasePlan {
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
