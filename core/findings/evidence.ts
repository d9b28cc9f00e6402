import type { Capture } from '../capture/capture.ts';
import type { Bank } from '../capture/roles.ts';
import { deadGain, slowestDeadGain } from '../measures/deadGain.ts';
import { fitOf } from '../measures/fitOf.ts';
import type { MeasureValue, WindowData } from '../measures/measure.ts';
import type { CaptureFit, ConverterFit } from '../model/fit.ts';
import { combineFits } from '../model/fitCapture.ts';
import { median } from '../statistics/quantile.ts';
import type { Seconds, Share } from '../units/quantities.ts';
import type { Stretch, WindowKind } from '../windows/window.ts';

/** What one window brings to the finding. */
export interface WindowEvidence extends Stretch {
  readonly capture: Capture;
  readonly kind: WindowKind;
  readonly lengthS: Seconds;
  readonly measures: ReadonlyMap<string, MeasureValue>;
  /** Share of the front swing that would come through with no converter. */
  readonly deadGain: Share;
  /** The same for as slow a rear sensor as this one may be. */
  readonly slowestDeadGain: Share;
  readonly wideband: boolean;
  /** The model fitted to this window, or null where that was not possible. */
  readonly fit: ConverterFit | null;
}

/** What reasons are drawn from: one window, or all windows of one converter taken together, so that each kind counts once. */
export interface Evidence {
  readonly bank: Bank;
  readonly troubleCodes: readonly string[];
  /** Mean of a measure over the steady windows, by length; null where none has it. */
  steady(id: string): number | null;
  /** The same, each value first divided by its own window's dead gain. */
  steadyOverDead(id: string, sensor?: 'usual' | 'slowest'): number | null;
  /** Middle value of a measure over all windows, for what snaps and fuel cuts show. */
  middle(id: string): number | null;
  /** Whether the front sensor is a wideband one. */
  readonly wideband: boolean;
  /** Evidence of a healthy twin under the same kind of test, or null where none was given. */
  readonly twin: Evidence | null;
  /** The model fitted to the longest steady windows and to fuel cuts together; null where nothing could be fitted. */
  fit(): CaptureFit | null;
}

/** Windows in which the fuel control swings about lambda 1 while nothing else happens. */
const STEADY: readonly WindowKind[] = ['hold', 'cruise', 'mixed'];

/** Evidence of one window. */
export function evidenceOf(data: WindowData, measures: ReadonlyMap<string, MeasureValue>): WindowEvidence {
  const { capture, window } = data;
  return {
    capture,
    startS: window.startS,
    endS: window.endS,
    kind: window.kind,
    lengthS: window.endS - window.startS,
    measures,
    deadGain: deadGain(data),
    slowestDeadGain: slowestDeadGain(data),
    wideband: data.upstream?.channel.role === 'upstreamLambda',
    fit: window.kind === 'idle' ? null : fitOf(data).fit,
  };
}

/**
 * Windows of one converter taken together. They see the same converter through the same sensors, so what they measure is
 * averaged and not added: ten windows are not ten times the proof.
 */
export function pool(
  windows: readonly WindowEvidence[],
  bank: Bank,
  troubleCodes: readonly string[],
  twin: Evidence | null = null,
): Evidence {
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
  // Asked for by several reasons, and worked out once.
  let fitted: { readonly fit: CaptureFit | null } | null = null;
  const measure = (window: WindowEvidence, id: string): number | null => window.measures.get(id)?.value ?? null;
  return {
    bank,
    troubleCodes,
    twin,
    wideband: windows.some(({ wideband }) => wideband),
    steady: (id) => mean((window) => measure(window, id)),
    steadyOverDead: (id, sensor = 'usual') =>
      mean((window) => {
        const value = measure(window, id);
        const gain = sensor === 'usual' ? window.deadGain : window.slowestDeadGain;
        return value === null ? null : value / gain;
      }),
    middle: (id) => {
      const values = windows.flatMap((window) => measure(window, id) ?? []);
      return values.length > 0 ? median(values) : null;
    },
    fit: () => {
      fitted ??= { fit: fitTogether(windows) };
      return fitted.fit;
    },
  };
}

/** More windows of either sort add little, as they miss in the same way. */
const MOST_STEADY = 3;
const MOST_CUTS = 4;

/** The longest steady windows and fuel cuts, fitted as one: they share the rear sensor. No cut counts twice. */
function fitTogether(windows: readonly WindowEvidence[]): CaptureFit | null {
  const fitted = windows.filter(({ fit }) => fit !== null).sort((a, b) => b.lengthS - a.lengthS || a.startS - b.startS);
  const steadyOnes = fitted.filter(({ kind }) => STEADY.includes(kind)).slice(0, MOST_STEADY);
  const cuts: WindowEvidence[] = [];
  for (const window of fitted) {
    if (STEADY.includes(window.kind) || cuts.length === MOST_CUTS) continue;
    if (cuts.every((cut) => cut.capture !== window.capture || apart(cut, window))) cuts.push(window);
  }
  const chosen = [...steadyOnes, ...cuts];
  const first = chosen[0];
  return first
    ? combineFits(
        first.capture,
        chosen.flatMap(({ fit }) => fit ?? []),
      )
    : null;
}

function apart(a: Stretch, b: Stretch): boolean {
  return a.endS <= b.startS || b.endS <= a.startS;
}
