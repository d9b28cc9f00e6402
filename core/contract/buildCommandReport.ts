// From captures and scores to the JSON of the headless command. Only picks and renames; every number was made elsewhere.

import type { Capture } from '../capture/capture.ts';
import { sampleCount } from '../capture/timeBase.ts';
import type { CaptureScore, Reason, Verdict, WindowScore } from '../findings/finding.ts';
import type { ThermalReading } from '../thermal/thermal.ts';
import { CORE_VERSION } from '../version.ts';
import {
  CONTRACT_VERSION,
  type CommandReport,
  type DescribeReport,
  type ReportedCapture,
  type ReportedWindow,
} from './commandReport.ts';

/** A capture that was read, with what only the reader of its bytes knows. */
export interface ReadInput {
  readonly capture: Capture;
  readonly sha256: string;
  /** Place on the command line, from 1. */
  readonly input: number;
}

/** The report of `--describe`: what was read, and no score. */
export function buildDescribeReport(read: ReadInput): DescribeReport {
  return {
    contract: CONTRACT_VERSION,
    tool: { name: 'tailtrace', version: CORE_VERSION },
    capture: reportedCapture(read),
  };
}

/** The report of a scored capture. */
export function buildCommandReport(read: ReadInput, score: CaptureScore): CommandReport {
  return {
    ...buildDescribeReport(read),
    windows: score.windows.map(reportedWindow),
    thermal: score.thermal.map(reportedThermal),
    verdict: judged(score.verdict),
    banks: score.banks.map((verdict) => ({ bank: verdict.bank, ...judged(verdict) })),
  };
}

function reportedCapture({ capture, sha256, input }: ReadInput): ReportedCapture {
  return {
    file: capture.name,
    sha256,
    durationS: tidy(capture.durationS),
    rows: capture.rows,
    warnings: capture.warnings.map(({ id, detail, row, count, repaired }) => ({ id, detail, row, count, repaired })),
    channels: capture.channels.map((channel) => ({
      role: channel.role,
      bank: channel.bank,
      name: channel.name,
      unit: channel.unit,
      samples: sampleCount(channel.time),
      medianRateHz: tidy(channel.facts.medianRateHz),
      sensor: channel.sensor,
      fileUnit: channel.fileUnit,
      renewalRateHz: tidy(channel.facts.renewalRateHz),
    })),
    input,
    bytes: capture.bytes,
    startClock: capture.startClock,
    layout: capture.layout.words,
    headerKey: capture.layout.headerKey,
  };
}

function reportedWindow(score: WindowScore): ReportedWindow {
  const { measures } = score;
  return {
    startS: tidy(score.startS),
    endS: tidy(score.endS),
    bank: score.bank,
    kind: score.kind,
    origin: score.origin,
    conditions: score.conditions.map(({ id, met, detail }) => ({ id, met, detail })),
    measures: Object.fromEntries(measures.map(({ id, value }) => [id, value === null ? null : tidy(value)])),
    uncertainty: Object.fromEntries(
      measures.flatMap(({ id, interval }) => (interval === null ? [] : [[id, tidyPair(interval)]])),
    ),
    finding: score.finding,
    probabilityNotStoring: score.probabilityNotStoring,
    reasons: score.reasons.map(reportedReason),
    missing: Object.fromEntries(measures.flatMap(({ id, missing }) => (missing === null ? [] : [[id, missing]]))),
    blockers: score.blockers.map(({ words }) => words),
    blockerIds: score.blockers.map(({ id }) => id),
  };
}

function reportedThermal({ inletC, outletC, riseC, riseInterval, reading, bank, brick }: ThermalReading) {
  return {
    inletC: tidy(inletC),
    outletC: tidy(outletC),
    riseC: tidy(riseC),
    reading,
    riseInterval: tidyPair(riseInterval),
    bank,
    brick,
  };
}

function judged(verdict: Verdict) {
  return {
    finding: verdict.finding,
    probabilityNotStoring: verdict.probabilityNotStoring,
    blockers: verdict.blockers.map(({ words }) => words),
    nextTest: verdict.nextTests[0]?.words ?? null,
    reasons: verdict.reasons.map(reportedReason),
    blockerIds: verdict.blockers.map(({ id }) => id),
    nextTests: verdict.nextTests.map(({ id, words, why, minutes }) => ({ id, words, why, minutes })),
    sentence: verdict.sentence,
  };
}

function reportedReason({ id, for: speaksFor, weight, detail }: Reason) {
  return { for: speaksFor, weight: tidy(weight), detail, id };
}

/**
 * Twelve significant digits: what lies behind the last of them is the rounding of binary arithmetic and would print
 * 0.30000000000000004. A number that is not finite is a broken promise of whoever made it.
 */
function tidy(value: number): number {
  if (!Number.isFinite(value)) throw new RangeError('a number of the report is not finite');
  return Number(value.toPrecision(12));
}

function tidyPair([low, high]: readonly [number, number]): [number, number] {
  return [tidy(low), tidy(high)];
}
