import { Redo2, Undo2 } from 'lucide-react';
import { useStore } from 'zustand';
import { repairOf } from '../../core/capture/repairs.ts';
import type { CaptureWarning } from '../../core/capture/warnings.ts';
import { warningRow } from '../../core/words/warningRow.ts';
import { changeRepair } from '../actions/changeRepair.ts';
import { useProgram } from '../program/programContext.ts';
import { Button } from '../widgets/Button.tsx';
import { keptTogether } from '../words/numbers.ts';

/** Everything odd that reading found. What it repaired can be undone here, and repaired again. */
export function OddThings({
  captureId,
  warnings,
}: {
  readonly captureId: string;
  readonly warnings: readonly CaptureWarning[];
}) {
  return (
    <section className="reportPart">
      <h3>What was odd</h3>
      {warnings.length === 0 ? (
        <p className="soft">Nothing.</p>
      ) : (
        <ul className="warnings">
          {warnings.map((warning, i) => (
            // The same repair, made or undone, stays the same entry, so that its button keeps the focus.
            <li key={`${warning.id} ${warnings.slice(0, i).filter(({ id }) => id === warning.id).length}`}>
              {keptTogether(warning.detail)}{' '}
              {warning.row !== null && <span className="soft">{warningRow(warning)}</span>}
              <Repair captureId={captureId} warning={warning} warnings={warnings} at={i} />
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

interface RepairProps {
  readonly captureId: string;
  readonly warning: CaptureWarning;
  readonly warnings: readonly CaptureWarning[];
  readonly at: number;
}

/** Whether a repair stands, and the button that changes it: one for all channels, beside the first that it concerns. */
function Repair({ captureId, warning, warnings, at }: RepairProps) {
  const program = useProgram();
  const readOnly = useStore(program.record, (state) => state.readOnly);
  const reading = useStore(program.captures, (state) => state.jobs.length > 0);
  const repair = repairOf(warning);
  if (repair === null) return null;
  const same = warnings.filter(({ id }) => id === warning.id);
  const first = warnings.findIndex(({ id }) => id === warning.id) === at;
  const all = same.length > 1 ? `all ${same.length} repairs of this kind` : 'this repair';
  const words = repair.made ? `Undo ${all}` : `Make ${all} again`;
  return (
    <>
      <span className="soft"> {repair.made ? 'Repaired while reading.' : 'The repair was undone.'}</span>
      {first && (
        <div className="repair">
          <Button
            look="quiet"
            icon={repair.made ? Undo2 : Redo2}
            label={`${words}: ${warning.detail}`}
            reason={reasonAgainst(readOnly, reading)}
            onPress={() => void changeRepair(program, captureId, repair.id, !repair.made)}
          >
            {words}
          </Button>
        </div>
      )}
    </>
  );
}

function reasonAgainst(readOnly: boolean, reading: boolean): string | null {
  if (readOnly) return 'This record was made by a newer program and can only be read.';
  return reading ? 'Wait until the file is read.' : null;
}
