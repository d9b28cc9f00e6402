import type { Bank } from '../capture/roles.ts';
import { deadGain } from '../measures/deadGain.ts';
import type { MeasureValue, WindowData } from '../measures/measure.ts';
import { median } from '../statistics/quantile.ts';
import type { Seconds, Share } from '../units/quantities.ts';
import type { WindowKind } from '../windows/window.ts';

/** What one window brings to the finding. */
export interface WindowEvidence {
  readonly kind: WindowKind;
  readonly lengthS: Seconds;
  readonly measures: ReadonlyMap<string, MeasureValue>;
  /** Share of the front swing that would come through with no converter. */
  readonly deadGain: Share;
  readonly wideband: boolean;
}

/** What reasons are drawn from: one window, or all windows of one converter taken together, so that each kind counts once. */
export interface Evidence {
  readonly bank: Bank;
  readonly troubleCodes: readonly string[];
  /** Mean of a measure over the steady windows, by length; null where none has it. */
  steady(id: string): number | null;
  /** The same, each value first divided by its own window's dead gain. */
  steadyOverDead(id: string): number | null;
  /** Middle value of a measure over all windows, for what snaps and fuel cuts show. */
  middle(id: string): number | null;
  /** Whether the front sensor is a wideband one. */
  readonly wideband: boolean;
}

/** Windows in which the fuel control swings about lambda 1 while nothing else happens. */
const STEADY: readonly WindowKind[] = ['hold', 'cruise', 'mixed'];

/** Evidence of one window. */
export function evidenceOf(data: WindowData, measures: ReadonlyMap<string, MeasureValue>): WindowEvidence {
  return {
    kind: data.window.kind,
    lengthS: data.window.endS - data.window.startS,
    measures,
    deadGain: deadGain(data),
    wideband: data.upstream?.channel.role === 'upstreamLambda',
  };
}

/**
 * Windows of one converter taken together. They see the same converter through the same sensors, so what they measure is
 * averaged and not added: ten windows are not ten times the proof.
 */
export function pool(windows: readonly WindowEvidence[], bank: Bank, troubleCodes: readonly string[]): Evidence {
  const chosen = windows.filter(({ kind }) => STEADY.includes(kind));
  // An idle alone is looked at for what it is worth; it never joins a hold.
  const steadyOnes = chosen.length > 0 ? chosen : windows.filter(({ kind }) => kind === 'idle');
  const mean = (of: (window: WindowEvidence) => number | null): number | null => {
    let sum = 0;
    let total = 0;
    for (const window of steadyOnes) {
      const value = of(window);
      if (value === null) continue;
      sum += window.lengthS * value;
      total += window.lengthS;
    }
    return total > 0 ? sum / total : null;
  };
  const measure = (window: WindowEvidence, id: string): number | null => window.measures.get(id)?.value ?? null;
  return {
    bank,
    troubleCodes,
    wideband: windows.some(({ wideband }) => wideband),
    steady: (id) => mean((window) => measure(window, id)),
    steadyOverDead: (id) =>
      mean((window) => {
        const value = measure(window, id);
        return value === null ? null : value / window.deadGain;
      }),
    middle: (id) => {
      const values = windows.flatMap((window) => measure(window, id) ?? []);
      return values.length > 0 ? median(values) : null;
    },
  };
}
