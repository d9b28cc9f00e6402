import type { CaptureRef } from '../record/schema.ts';
import { pairOf } from '../thermal/pairOf.ts';
import { readThermal } from '../thermal/readThermal.ts';
import { lowerFirst } from '../words/numbers.ts';
import { costsOf, judgeStage, type Stage, type StageName, tellsOf } from './judgeStage.ts';
import { judgeForBanks } from './scoreWindow.ts';
import { basisSentence } from './sentences.ts';
import type { KeptWindow, VehicleEvidence } from './vehicleEvidence.ts';
import type { KeptThermalReading, VehicleScore } from './vehicleScore.ts';

/**
 * Everything the core says about a vehicle: each window and reading by itself, how the vehicle was found, and, where
 * there are captures after a repair, how it is now.
 */
export function judgeVehicle(evidence: VehicleEvidence): VehicleScore {
  const windows = judgeWindows(evidence);
  const thermal = evidence.readings.map(
    (reading): KeptThermalReading => ({ readingId: reading.id, reading: readThermal(pairOf(reading)) }),
  );
  const before = judgeStage(evidence, windows, thermal, 'before');
  const repaired = evidence.captures.some(({ kind }) => kind === 'after');
  const after = repaired ? judgeStage(evidence, windows, thermal, 'after') : null;
  return {
    windows: windows.map(({ judged, ...kept }) => ({ ...kept, score: judged.score })),
    thermal,
    before,
    after,
    sentence: topLine(windows, thermal.length, before, after),
  };
}

function judgeWindows(evidence: VehicleEvidence): KeptWindow[] {
  return evidence.captures.flatMap(({ capture, captureId, kind, windows }) =>
    windows.flatMap((window) =>
      judgeForBanks(capture, window, codesFor(kind, evidence), costsOf(evidence)).map(
        (judged): KeptWindow => ({ windowId: window.id, captureId, kind, judged }),
      ),
    ),
  );
}

/** Codes belong to the car as it was found; what is recorded after the repair or on a twin starts without them. */
function codesFor(kind: CaptureRef['kind'], { troubleCodes }: VehicleEvidence): readonly string[] {
  return tellsOf(kind, 'before') ? troubleCodes : [];
}

function topLine(windows: readonly KeptWindow[], readings: number, before: Stage, after: Stage | null): string {
  const basis = (stage: StageName, { verdict }: Stage): string => {
    const ids = new Set(windows.filter(({ kind }) => tellsOf(kind, stage)).map(({ windowId }) => windowId));
    return basisSentence(ids.size, readings, verdict.blockers);
  };
  if (!after) return `${before.verdict.sentence} ${basis('before', before)}`;
  return `After the repair: ${lowerFirst(after.verdict.sentence)} ${basis('after', after)} Before: ${lowerFirst(before.verdict.sentence)}`;
}
