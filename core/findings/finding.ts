import type { Bank } from '../capture/roles.ts';
import type { ConditionResult } from '../conditions/condition.ts';
import type { MeasureValue } from '../measures/measure.ts';
import type { ThermalReading } from '../thermal/thermal.ts';
import type { Share } from '../units/quantities.ts';
import type { CaptureWindow } from '../windows/window.ts';

/** What may be said of a converter. 'cannotTell' is an answer: it comes with the next test to make. */
export const FINDINGS = ['storing', 'weak', 'notStoring', 'cannotTell'] as const;
export type Finding = (typeof FINDINGS)[number];

/** One piece of evidence: which finding it speaks for, how strongly (natural logarithm of odds), and in words why. */
export interface Reason {
  readonly id: string;
  readonly for: Finding;
  readonly weight: number;
  readonly detail: string;
}

/** Why a finding may not be given yet, and the test that removes it. */
export interface Blocker {
  readonly id: string;
  /** A sentence: what stands in the way, with its numbers. */
  readonly words: string;
  /** Id of the next test that removes it. */
  readonly removedBy: string;
}

/** A test worth making next, with the reason for making it before others. */
export interface NextTest {
  readonly id: string;
  /** What to do, in the imperative, ready to be read in the bay. */
  readonly words: string;
  /** Why this one: which blocker it removes or what it may change. */
  readonly why: string;
  /** Minutes it takes, a rough figure of the trade. */
  readonly minutes: number;
}

/** Everything the core says about one window. */
export interface WindowScore extends CaptureWindow {
  readonly conditions: readonly ConditionResult[];
  readonly measures: readonly MeasureValue[];
  readonly finding: Finding;
  readonly probabilityNotStoring: Share | null;
  /** Strongest first, for and against together. */
  readonly reasons: readonly Reason[];
  readonly blockers: readonly Blocker[];
  /** Best first; empty where nothing more is worth its minutes. */
  readonly nextTests: readonly NextTest[];
}

/** Everything the core says about a converter, over all windows, captures and readings that concern it. */
export interface Verdict {
  readonly finding: Finding;
  readonly probabilityNotStoring: Share | null;
  readonly blockers: readonly Blocker[];
  readonly reasons: readonly Reason[];
  readonly nextTests: readonly NextTest[];
  /** One sentence for the top of the page: "Converter of bank 1: does not store oxygen (97 %)." */
  readonly sentence: string;
  /** Which converter or converters lie between the two sensors, a sentence; left out where nobody said and one is usual. */
  readonly embraces?: string;
}

/** A verdict and the bank it is about. */
export interface BankVerdict extends Verdict {
  readonly bank: Bank;
}

/** The score of one capture. */
export interface CaptureScore {
  readonly windows: readonly WindowScore[];
  readonly thermal: readonly ThermalReading[];
  /** One for each bank that has evidence, ascending. */
  readonly banks: readonly BankVerdict[];
  /** Over all banks: the worst that is known, with its bank named in the sentence. */
  readonly verdict: Verdict;
}
