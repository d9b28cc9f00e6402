import { Pencil } from 'lucide-react';
import { bankWords, WINDOW_KIND_WORDS } from '../../core/evidence/words/terms.ts';
import type { WindowScore } from '../../core/findings/finding.ts';
import type { RecordWindow } from '../../core/record/schema.ts';
import { CommandButton } from '../commands/CommandButton.tsx';
import { windowName } from '../state/selectors/windowNames.ts';
import { ORIGIN_WORDS } from '../words/terms.ts';
import { stretchWords } from '../words/times.ts';
import { ScoreSheet } from './ScoreSheet.tsx';

interface WindowReportProps {
  readonly window: RecordWindow;
  readonly score: WindowScore | null;
}

/** The finding of a marked window. */
export function WindowReport({ window, score }: WindowReportProps) {
  return (
    <div className="report" aria-live="off">
      <div className="reportHead">
        <div>
          <h2>{windowName(window)}</h2>
          <p className="soft">
            {stretchWords(window)}, {bankWords(window.bank)}, {WINDOW_KIND_WORDS[window.kind].toLowerCase()},{' '}
            {ORIGIN_WORDS[window.origin]}
          </p>
        </div>
        <CommandButton id="window.times" icon={Pencil} words="Edit" />
      </div>
      {score === null ? <p>Not scored yet: its capture is not open.</p> : <ScoreSheet score={score} />}
    </div>
  );
}
