import type { ThermalReading } from '../thermal/thermal.ts';
import { listed, round } from '../words/numbers.ts';
import type { Reason } from './finding.ts';
import { signedReason } from './signedReason.ts';

/**
 * Readings of one converter are one piece of evidence: the mean of their weights, `times` over, not their sum. Those that
 * tell nothing, as one at idle, take nothing from those that do; without any of these there is no reason.
 */
export function thermalReason(all: readonly ThermalReading[], times: number): Reason[] {
  const thermal = all.filter(({ weight }) => weight !== 0);
  if (thermal.length === 0) return [];
  const mean = thermal.reduce((sum, { weight }) => sum + weight, 0) / thermal.length;
  const rises = listed(thermal.map(({ riseC }) => `${round(riseC, 0)} K`));
  return [
    signedReason(
      'thermal',
      times * mean,
      `Outlet against inlet: ${rises}. Temperatures support a finding; they never make one.`,
    ),
  ];
}
