import { type MadeFinding, madeFindings } from '../../core/evidence/madeFindings.ts';
import type { VehicleScore } from '../../core/findings/vehicleScore.ts';
import { keepFindings as keepFindingsEdit } from '../../core/record/edits/findings.ts';
import type { KeptFinding } from '../../core/record/schema.ts';
import { CORE_VERSION } from '../../core/version.ts';
import type { Program } from '../program/program.ts';
import { wholeRecordOf } from '../state/recordStore.ts';

/**
 * Writes the findings into the record as they stand, with the version that made them. No step of undo, and no change
 * where they say the same as before: a finding keeps the time at which it was first made. What another version of the core
 * had found is shown beside them as long as the vehicle is open (T-EV-3).
 */
export function keepFindings(program: Program, score: VehicleScore): void {
  const record = wholeRecordOf(program.record.getState());
  if (record === null) return;
  const findings = madeFindings(score).map((made): KeptFinding => {
    const before = record.findings[made.id];
    if (before !== undefined && before.coreVersion === CORE_VERSION && saysTheSame(before, made)) return before;
    return { ...made, coreVersion: CORE_VERSION, madeAt: program.clock.instant() };
  });
  const others = Object.values(record.findings).filter(({ coreVersion }) => coreVersion !== CORE_VERSION);
  if (others.length > 0)
    program.wholeScore.setState({ byOtherCore: Object.fromEntries(others.map((one) => [one.id, one])) });
  program.record.getState().absorb(keepFindingsEdit(findings));
}

function saysTheSame(before: KeptFinding, made: MadeFinding): boolean {
  return (
    before.finding === made.finding &&
    before.probabilityNotStoring === made.probabilityNotStoring &&
    before.sentence === made.sentence
  );
}
