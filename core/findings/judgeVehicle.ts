import type { Capture } from '../capture/capture.ts';
import type { Brick, CaptureRef, Reading, RecordWindow } from '../record/schema.ts';
import { pairOf } from '../thermal/pairOf.ts';
import { readThermal } from '../thermal/readThermal.ts';
import { type DecisionCosts, USUAL_COSTS } from './costs.ts';
import type { BankVerdict, Verdict } from './finding.ts';
import { judgeAll } from './judgeAll.ts';
import { judgeBanks } from './judgeBanks.ts';
import type { JudgedWindow } from './judgeWindow.ts';
import { judgeForBanks } from './scoreWindow.ts';
import { basisSentence } from './sentences.ts';
import type { KeptThermalReading, KeptWindowScore, VehicleScore } from './vehicleScore.ts';

/** What a vehicle is judged from: its open captures with the record's windows in them, readings and codes. */
export interface VehicleEvidence {
  readonly captures: readonly {
    readonly capture: Capture;
    readonly captureId: string;
    readonly kind: CaptureRef['kind'];
    readonly windows: readonly RecordWindow[];
  }[];
  readonly readings: readonly Reading[];
  /** Upper case. */
  readonly troubleCodes: readonly string[];
  readonly rearSensor: 'yes' | 'no' | 'unknown';
  /** What decisions cost; usual proportions where left out or 0. */
  readonly costs?: DecisionCosts;
  /** How the exhaust is laid out. */
  readonly bricks?: readonly Brick[];
}

/** A window of the record, judged. */
interface KeptWindow {
  readonly windowId: string;
  readonly captureId: string;
  readonly kind: CaptureRef['kind'];
  readonly judged: JudgedWindow;
}

function keptScore({ windowId, captureId, kind, judged }: KeptWindow): KeptWindowScore {
  return { windowId, captureId, kind, score: judged.score };
}

/** Codes belong to the car as it was found; what is recorded after the repair or on a twin starts without them. */
function codesFor(kind: CaptureRef['kind'], { troubleCodes }: VehicleEvidence): readonly string[] {
  return kind === 'after' || kind === 'knownGood' ? [] : troubleCodes;
}

type Stage = { readonly verdict: Verdict; readonly banks: readonly BankVerdict[] };

/**
 * Everything the core says about a vehicle. Windows of 'before' and 'other' captures tell how it was found, those of
 * 'after' captures how it is after the repair; a reading belongs to the stage of the capture that ran while it was
 * taken, or else to how it was found.
 */
export function judgeVehicle(evidence: VehicleEvidence): VehicleScore {
  const windows = evidence.captures.flatMap(({ capture, captureId, kind, windows: kept }) =>
    kept.flatMap((window) =>
      judgeForBanks(capture, window, codesFor(kind, evidence), costsOf(evidence)).map((judged) => ({
        windowId: window.id,
        captureId,
        kind,
        judged,
      })),
    ),
  );
  const thermal = evidence.readings.map(
    (reading): KeptThermalReading => ({ readingId: reading.id, reading: readThermal(pairOf(reading)) }),
  );
  const before = stage(evidence, windows, thermal, ['before', 'other']);
  const hasAfter = evidence.captures.some(({ kind }) => kind === 'after');
  const after = hasAfter ? stage(evidence, windows, thermal, ['after']) : null;
  return {
    windows: windows.map(keptScore),
    thermal,
    before,
    after,
    sentence: topLine(windows, thermal, before, after),
  };
}

function stage(
  evidence: VehicleEvidence,
  windows: readonly KeptWindow[],
  thermal: readonly KeptThermalReading[],
  kinds: readonly CaptureRef['kind'][],
): Stage {
  const captures = evidence.captures.filter(({ kind }) => kinds.includes(kind));
  const ids = new Set(captures.map(({ captureId }) => captureId));
  const isFirst = kinds.includes('before');
  const others = new Set(evidence.captures.map(({ captureId }) => captureId));
  const readings = new Map(evidence.readings.map((reading) => [reading.id, reading]));
  const belongs = (readingId: string): boolean => {
    const captureId = readings.get(readingId)?.captureId ?? null;
    return captureId !== null && others.has(captureId) ? ids.has(captureId) : isFirst;
  };
  const banks = judgeBanks({
    windows: windows.filter(({ kind }) => kinds.includes(kind)).map(({ judged }) => judged),
    thermal: thermal.filter(({ readingId }) => belongs(readingId)).map(({ reading }) => reading),
    bank: null,
    troubleCodes: isFirst ? evidence.troubleCodes : [],
    captures: captures.map(({ capture }) => capture),
    rearSensor: evidence.rearSensor,
    costs: costsOf(evidence),
    bricks: evidence.bricks ?? [],
    twin: windows.filter(({ kind }) => kind === 'knownGood').map(({ judged }) => judged),
  });
  return { verdict: judgeAll(banks), banks };
}

function topLine(
  windows: readonly KeptWindow[],
  thermal: readonly KeptThermalReading[],
  before: Stage,
  after: Stage | null,
): string {
  const of = (kinds: readonly CaptureRef['kind'][]): number =>
    new Set(windows.filter(({ kind }) => kinds.includes(kind)).map(({ windowId }) => windowId)).size;
  if (!after)
    return `${before.verdict.sentence} ${basisSentence(of(['before', 'other']), thermal.length, before.verdict.blockers)}`;
  const basis = basisSentence(of(['after']), thermal.length, after.verdict.blockers);
  return `After the repair: ${lowerFirst(after.verdict.sentence)} ${basis} Before: ${lowerFirst(before.verdict.sentence)}`;
}

/** Settings that were never filled in are 0 in the record. */
function costsOf({ costs }: VehicleEvidence): DecisionCosts {
  return costs && costs.converterPrice > 0 && costs.labourHour > 0 ? costs : USUAL_COSTS;
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
