import { Pencil } from 'lucide-react';
import { useStore } from 'zustand';
import { bankWords, kindWords } from '../../core/evidence/words/terms.ts';
import type { WindowScore } from '../../core/findings/finding.ts';
import type { RecordWindow } from '../../core/record/schema.ts';
import { CommandButton } from '../commands/CommandButton.tsx';
import { useProgram } from '../program/programContext.ts';
import { readsBlind, recordOf } from '../state/recordStore.ts';
import { windowName } from '../state/selectors/windowNames.ts';
import { stretchWords } from '../words/captureTimes.ts';
import { ORIGIN_WORDS } from '../words/terms.ts';
import { HiddenFinding } from './HiddenFinding.tsx';
import { OtherCore } from './OtherCore.tsx';
import { ScoreSheets } from './ScoreSheet.tsx';

interface WindowReportProps {
  readonly window: RecordWindow;
  /** One for each bank it speaks of. */
  readonly scores: readonly WindowScore[];
}

/** The finding of a marked window. */
export function WindowReport({ window, scores }: WindowReportProps) {
  const { record } = useProgram();
  const blind = useStore(record, readsBlind);
  const captureS = useStore(record, (state) => recordOf(state)?.captures[window.captureId]?.durationS);
  return (
    <div className="report" aria-live="off">
      <div className="reportHead">
        <div>
          <h2>{windowName(window)}</h2>
          <p className="soft">
            {stretchWords(window, captureS)}, {bankWords(window.bank)},{' '}
            {kindWords(window.kind, scores[0]?.kind ?? null)}, {ORIGIN_WORDS[window.origin]}
          </p>
        </div>
        <CommandButton id="window.times" icon={Pencil} words="Edit" />
      </div>
      {blind && <HiddenFinding />}
      {!blind && scores.length === 0 && <p>Not scored yet: its capture is not open.</p>}
      <OtherCore findingId={`window-${window.id}`} />
      <ScoreSheets scores={scores} />
    </div>
  );
}
