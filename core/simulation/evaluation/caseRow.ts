import type { Blocker, Finding } from '../../findings/finding.ts';
import { fitCapture } from '../../model/fitCapture.ts';
import { scoreCapture } from '../../scoreCapture.ts';
import { suggestWindows } from '../../windows/suggestWindows.ts';
import type { ConverterClass } from '../population/classes.ts';
import { drawCase, type Split } from '../population/drawCase.ts';
import type { DriveKind } from '../population/drawDrive.ts';
import type { InstrumentTier } from '../population/drawInstrument.ts';
import type { DrawMode } from '../population/ranges.ts';

/** A case and what the scoring core said of it: plain data, so that it can travel between threads. */
export interface CaseRow {
  readonly index: number;
  readonly kind: ConverterClass;
  readonly fault: string | null;
  readonly drive: DriveKind;
  readonly tier: InstrumentTier;
  readonly sensorHz: number;
  readonly wideband: boolean;
  readonly properHold: boolean;
  readonly finding: Finding;
  readonly probabilityNotStoring: number | null;
  readonly blockers: readonly string[];
  /** Whether one of the blockers names the fault rightly; null without a fault. */
  readonly named: boolean | null;
  /** Capacities for two litres: true, and as the fit of the whole capture has it. */
  readonly trueFor2L: number;
  readonly fit: {
    readonly for2L: number;
    readonly low: number | null;
    readonly high: number | null;
    readonly good: number;
    readonly dead: number;
    readonly airPulls: number;
    /** Grams, where air flow was recorded. */
    readonly grams: number | null;
  } | null;
  readonly trueGrams: number;
}

/** Draws a case, scores it as the headless command would, and sets truth beside answer. */
export function evaluateCase(index: number, split: Split, mode: DrawMode): CaseRow {
  const { truth, capture, troubleCodes } = drawCase(index, split, mode);
  const score = scoreCapture(capture, { windows: null, bank: truth.bank, thermal: [], troubleCodes });
  const verdict = score.banks.find(({ bank }) => bank === truth.bank || bank === null) ?? score.verdict;
  const fit = fitCapture(capture, truth.bank, suggestWindows(capture));
  return {
    index,
    kind: truth.kind,
    fault: truth.fault?.id ?? null,
    drive: truth.drive,
    tier: truth.tier,
    sensorHz: truth.sensorHz,
    wideband: truth.wideband,
    properHold: truth.properHold,
    finding: verdict.finding,
    probabilityNotStoring: verdict.probabilityNotStoring,
    blockers: verdict.blockers.map(({ id }) => id),
    named: truth.fault ? namesIt(verdict.blockers, truth.fault.blockers) : null,
    trueFor2L: truth.capacityFor2L,
    fit: fit && {
      for2L: fit.capacityFor2L,
      low: fit.intervalFor2L[0],
      high: fit.intervalFor2L[1],
      good: fit.logLikelihoodGood,
      dead: fit.logLikelihoodDead,
      airPulls: fit.airPulls,
      grams: fit.capacityG,
    },
    trueGrams: truth.capacityG,
  };
}

function namesIt(blockers: readonly Blocker[], right: readonly string[]): boolean {
  return blockers.some(({ id }) => right.includes(id));
}
