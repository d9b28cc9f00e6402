import { Download } from 'lucide-react';
import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import type { Outcome, Problem } from '../../core/reading/problem.ts';
import type { ColumnGuess, ColumnQuestion } from '../../core/reading/readCapture.ts';
import { changeColumns, columnQuestion, keepGuess } from '../actions/changeColumns.ts';
import { exportColumns, undoneIn } from '../actions/exportColumns.ts';
import { useProgram } from '../program/programContext.ts';
import { recordOf } from '../state/recordStore.ts';
import { Button } from '../widgets/Button.tsx';
import { Dialog } from '../widgets/Dialog.tsx';
import { NumberField } from '../widgets/NumberField.tsx';
import { ProblemNote } from '../widgets/ProblemNote.tsx';
import { ScrollStop } from '../widgets/ScrollStop.tsx';
import { goToWrongField } from '../widgets/wrongField.ts';
import { countWords, withUnit } from '../words/numbers.ts';
import { durationWords } from '../words/times.ts';
import { ColumnRow } from './ColumnRow.tsx';
import { choiceOf } from './columnChoice.ts';
import type { DialogProps } from './dialogProps.ts';

/** Which column is what: the rows of the file, the guess, and what follows from it. */
export function ColumnsDialog({ captureId, onClose }: DialogProps & { readonly captureId: string }) {
  const program = useProgram();
  const name = useStore(program.record, (state) => recordOf(state)?.captures[captureId]?.name ?? '');
  const [found, setFound] = useState<Outcome<ColumnQuestion | null> | null>(null);
  useEffect(() => void columnQuestion(program, captureId).then(setFound), [program, captureId]);
  const question = found?.ok === true ? found.value : null;
  const nothingToChoose = found?.ok === true && question === null;
  const leave = (): void => {
    keepGuess(program, captureId);
    onClose();
  };
  if (question === null) {
    return (
      <Dialog
        title="Columns"
        lead={name}
        onClose={leave}
        foot={
          nothingToChoose && undoneIn(program, captureId).length > 0 ? (
            <Button icon={Download} onPress={() => void exportColumns(program, captureId, null, [])}>
              Export as columns file
            </Button>
          ) : undefined
        }
      >
        {found === null && <p>Reading the columns.</p>}
        {found?.ok === false && <ProblemNote problem={found.problem} />}
        {nothingToChoose && <p>This kind of file says itself which column is what; there is nothing to choose.</p>}
      </Dialog>
    );
  }
  return <Asked captureId={captureId} name={name} question={question} onClose={leave} />;
}

interface AskedProps extends DialogProps {
  readonly captureId: string;
  readonly name: string;
  readonly question: ColumnQuestion;
}

function Asked({ captureId, name, question, onClose }: AskedProps) {
  const program = useProgram();
  const [guesses, setGuesses] = useState<readonly ColumnGuess[]>(question.guesses);
  const [rateHz, setRateHz] = useState<number | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const timed = guesses.some((guess) => guess.role === 'time');
  const read = useStore(program.captures, (state) => state.held[captureId]?.summary);

  const choice = choiceOf(question.headerKey, guesses, rateHz);

  const keep = async (): Promise<void> => {
    if (goToWrongField(document)) return;
    if (!timed && rateHz === null && question.needsRate) {
      setProblem(rateMissing(name));
      return;
    }
    const wrong = await changeColumns(program, captureId, choice);
    if (wrong === null) onClose();
    else setProblem(wrong);
  };

  return (
    <Dialog
      title="Which column is what"
      lead={`${name}. ${question.words} Your answer is kept for files with the same header.`}
      width="page"
      onClose={onClose}
      foot={
        <>
          <Button icon={Download} onPress={() => void exportColumns(program, captureId, choice, guesses)}>
            Export as columns file
          </Button>
          <Button look="quiet" onPress={onClose}>
            Leave the guess
          </Button>
          <Button look="main" onPress={() => void keep()}>
            Use these columns
          </Button>
        </>
      }
    >
      {problem !== null && <ProblemNote problem={problem} onDismiss={() => setProblem(null)} />}
      {read !== undefined && (
        <p className="soft">
          Read so far as {durationWords(read.durationS)} with {countWords(read.rows, 'row')}
          {read.durationS > 0 ? `, ${withUnit(read.rows / read.durationS, 'rows/s', 1)}` : ''}.
        </p>
      )}
      {(question.needsRate || !timed) && (
        <NumberField
          label="Rows a second, where no column is the time"
          unit="1/s"
          value={rateHz}
          min={0.001}
          onValue={setRateHz}
        />
      )}
      <table className="plainTable columnsTable">
        <thead>
          <tr>
            <th scope="col">In the file</th>
            <th scope="col">First values</th>
            <th scope="col">Is</th>
            <th scope="col">Bank</th>
            <th scope="col">Sensor</th>
            <th scope="col">Unit</th>
            <th scope="col" className="figure">
              Range
            </th>
          </tr>
        </thead>
        <tbody>
          {guesses.map((guess) => (
            <ColumnRow
              key={guess.index}
              guess={guess}
              examples={question.preview.slice(1).map((row) => row[guess.index] ?? '')}
              onChange={(changed) =>
                setGuesses(guesses.map((one) => (one.index === changed.index ? { ...changed, certain: true } : one)))
              }
            />
          ))}
        </tbody>
      </table>
      <details className="previewRows">
        <summary>First rows of the file</summary>
        <ScrollStop label="First rows of the file">
          <pre>{previewText(question.preview)}</pre>
        </ScrollStop>
      </details>
    </Dialog>
  );
}

function rateMissing(name: string): Problem {
  return {
    id: 'rateMissing',
    what: 'No column is the time, and no rate is given.',
    where: name,
    doNext: 'Say which column is the time, or type how many rows a second were recorded.',
  };
}

/** The rows with their columns under each other. */
export function previewText(rows: readonly (readonly string[])[]): string {
  const widths: number[] = [];
  for (const row of rows)
    row.forEach((cell, column) => {
      widths[column] = Math.max(widths[column] ?? 0, cell.length);
    });
  return rows.map((row) => row.map((cell, column) => cell.padEnd(widths[column] ?? 0)).join('  ')).join('\n');
}
