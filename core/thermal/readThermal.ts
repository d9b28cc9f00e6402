import type { Celsius, KelvinDifference } from '../units/quantities.ts';
import { round } from '../words/numbers.ts';
import { halfInterval } from './instrument.ts';
import { CLEAN_RISE_K } from './oxidationRise.ts';
import type { ThermalPair, ThermalReading } from './thermal.ts';

/** The rise that old rules of thumb ask for: 100 °F (check 5.05). */
const OLD_RULE_K = 100 / 1.8;
/** Above this, fuel is burned in it: a misfire or a rich mixture (200 °F, check 5.05). */
const OVERHEAT_K = 200 / 1.8;
/** A converter's temperature tells something only where the engine was held at this speed (common practice, no source). */
const HELD_RPM = 1500;
/** An inlet this cool is of an exhaust that the engine has not heated (common practice, no source). */
const HEATED_C: Celsius = 90;
/** What a clean engine leaves to burn, half of it lost: the rise that speaks for neither side. */
const NEITHER_K: KelvinDifference = CLEAN_RISE_K / 2;

/** The most a pair of temperatures may weigh, as a logarithm of odds: three printed sources read it three ways (check 5.05). */
const MOST_WEIGHT = 0.8;

/**
 * Reads a pair of surface temperatures taken by hand: rise, its 95 % interval, a sentence, and a small weight. A rise
 * speaks for a converter at work; a late, clean engine leaves some 20 K to burn at most, so no rise says little; an
 * outlet far below the inlet, beyond what instrument and finish of the steel explain, says a little more.
 */
export function readThermal(pair: ThermalPair): ThermalReading {
  const riseC = pair.outletC - pair.inletC;
  const half = Math.hypot(halfInterval(pair.inletC, pair.emissivity), halfInterval(pair.outletC, pair.emissivity));
  const unfit = whyUnfit(pair);
  return {
    ...pair,
    riseC,
    riseInterval: [riseC - half, riseC + half],
    reading: words(riseC, half, unfit),
    weight: unfit === null ? weightOf(riseC, half) : 0,
  };
}

/** From full weight for storing at a rise of the old rule to full weight against at a drop of as much, flattened by doubt. */
function weightOf(riseC: number, half: number): number {
  if (riseC > OVERHEAT_K) return 0;
  const share = (NEITHER_K - riseC) / Math.hypot(OLD_RULE_K - NEITHER_K, half);
  return MOST_WEIGHT * Math.min(1, Math.max(-1, share));
}

/** Why a pair tells nothing whatever it reads, or null where it may. */
function whyUnfit({ rpm, inletC }: ThermalPair): string | null {
  if (rpm !== null && rpm < HELD_RPM) return 'not at a raised speed';
  return inletC > HEATED_C ? null : 'on an exhaust that was not hot';
}

/** Says no more than the weight bears: what speaks for a side in words does so in weight. */
function words(riseC: number, half: number, unfit: string | null): string {
  const rise = `${round(Math.abs(riseC), 0)} K (± ${round(half, 0)} K)`;
  if (unfit !== null)
    return `Outlet ${riseC < 0 ? 'below' : 'above'} inlet by ${rise}, but ${unfit}: it tells nothing.`;
  if (riseC > OVERHEAT_K)
    return `Outlet above inlet by ${rise}: too much fuel is burned in the converter. Find the misfire or the rich mixture first.`;
  if (riseC >= OLD_RULE_K) return `Outlet above inlet by ${rise}: the converter is at work.`;
  if (riseC - half > NEITHER_K) return `Outlet above inlet by ${rise}: speaks a little for a converter at work.`;
  if (riseC - half > 0)
    return `Outlet above inlet by ${rise}: hardly speaks for or against it; a clean engine leaves about that much to burn.`;
  if (riseC + half < 0)
    return `Outlet below inlet by ${rise}: speaks a little against it; a late, clean engine may read so with a good one.`;
  return `Outlet and inlet within what the instrument can tell (${round(riseC, 0)} K ± ${round(half, 0)} K): no evidence either way.`;
}
