import type { CaptureRef } from '../record/schema.ts';
import { type DecisionCosts, USUAL_COSTS } from './costs.ts';
import type { BankVerdict, Verdict } from './finding.ts';
import { judgeAll } from './judgeAll.ts';
import { judgeBanks } from './judgeBanks.ts';
import type { KeptWindow, VehicleEvidence } from './vehicleEvidence.ts';
import type { KeptThermalReading } from './vehicleScore.ts';

/** A time in a vehicle's story: as it was found, or after the repair. */
export const STAGES = {
  before: ['before', 'other'],
  after: ['after'],
} as const satisfies Record<string, readonly CaptureRef['kind'][]>;
export type StageName = keyof typeof STAGES;

/** What is said of one stage. */
export interface Stage {
  readonly verdict: Verdict;
  readonly banks: readonly BankVerdict[];
}

/** Whether a capture of this kind tells of a stage. A known-good twin tells of neither: it only lends its measures. */
export function tellsOf(kind: CaptureRef['kind'], stage: StageName): boolean {
  return STAGES[stage].some((one) => one === kind);
}

/**
 * The verdict on one stage, from its own windows and readings. A reading belongs to the stage of the capture that ran
 * while it was taken, or else to how the vehicle was found.
 */
export function judgeStage(
  evidence: VehicleEvidence,
  windows: readonly KeptWindow[],
  thermal: readonly KeptThermalReading[],
  stage: StageName,
): Stage {
  const banks = judgeBanks({
    windows: windows.filter(({ kind }) => tellsOf(kind, stage)).map(({ judged }) => judged),
    thermal: thermal.filter(({ readingId }) => stageOf(readingId, evidence) === stage).map(({ reading }) => reading),
    bank: null,
    troubleCodes: stage === 'before' ? evidence.troubleCodes : [],
    captures: evidence.captures.filter(({ kind }) => tellsOf(kind, stage)).map(({ capture }) => capture),
    rearSensor: evidence.rearSensor,
    costs: costsOf(evidence),
    bricks: evidence.bricks ?? [],
    twin: windows.filter(({ kind }) => kind === 'knownGood').map(({ judged }) => judged),
  });
  return { verdict: judgeAll(banks), banks };
}

/** What decisions cost; settings that were never filled in are 0 in the record. */
export function costsOf({ costs }: VehicleEvidence): DecisionCosts {
  return costs && costs.converterPrice > 0 && costs.labourHour > 0 ? costs : USUAL_COSTS;
}

function stageOf(readingId: string, { captures, readings }: VehicleEvidence): StageName {
  const captureId = readings.find(({ id }) => id === readingId)?.captureId ?? null;
  return captures.find((capture) => capture.captureId === captureId)?.kind === 'after' ? 'after' : 'before';
}
