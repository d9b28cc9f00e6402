import { X } from 'lucide-react';
import { useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { CompareStack } from '../plot/CompareStack.tsx';
import type { ComparedSide } from '../plot/compareStackProps.ts';
import { useProgram } from '../program/programContext.ts';
import { themeOf } from '../state/settingsStore.ts';
import type { ViewState } from '../state/viewState.ts';
import { Button } from '../widgets/Button.tsx';
import { NumberField } from '../widgets/NumberField.tsx';
import { ProblemNote } from '../widgets/ProblemNote.tsx';
import { comparedPanes } from './comparedPanes.ts';
import { type BankSide, useComparedSides } from './useComparedSides.ts';
import { useComparison } from './useComparison.ts';

/** Short enough at first to see the single switches; one press shows the whole length. */
const READABLE_S = 20;

type Compare = NonNullable<ViewState['compare']>;

/** A window over another: first what was not alike, then the traces, then the measures side by side. */
export function ComparePage({ compare }: { readonly compare: Compare }) {
  const { workspace } = useProgram();
  const sides = useComparedSides(compare.firstId, compare.secondId);
  const answer = useComparison(compare.firstId, compare.secondId);
  const comparison = answer?.ok === true ? answer.value : null;
  const end = (): void => workspace.getState().set({ compare: null });
  return (
    <section className="comparePage" aria-label="Comparison">
      <div className="compareHead">
        <h2>{comparison?.sentence ?? (answer === null ? 'Comparing.' : 'These windows could not be compared.')}</h2>
        <Button icon={X} look="outline" onPress={end}>
          End comparison
        </Button>
      </div>
      {answer?.ok === false && <ProblemNote problem={answer.problem} />}
      {comparison !== null && comparison.unlike.length > 0 && (
        <ul className="unlike">
          {comparison.unlike.map(({ id, words }) => (
            <li key={id}>{words}</li>
          ))}
        </ul>
      )}
      {sides === null ? (
        <p>Both captures have to be open to be compared.</p>
      ) : (
        <ComparedTraces compare={compare} first={sides[0]} second={sides[1]} />
      )}
    </section>
  );
}

interface ComparedTracesProps {
  readonly compare: Compare;
  readonly first: BankSide;
  readonly second: BankSide;
}

function ComparedTraces({ compare, first, second }: ComparedTracesProps) {
  const { workspace, settings: settingsStore } = useProgram();
  const settings = useStore(settingsStore);
  const { wheel, showGuides, temperatureUnit, speedUnit } = settings.settings;
  const length = Math.max(lengthOf(first), lengthOf(second));
  const [visible, setVisible] = useState({ startS: 0, endS: Math.min(READABLE_S, length) });
  const [cursorS, setCursorS] = useState<number | null>(null);
  const panes = useMemo(() => comparedPanes(first, second), [first, second]);
  const units = useMemo(() => ({ temperature: temperatureUnit, speed: speedUnit }), [temperatureUnit, speedUnit]);
  /** A figure that is given while the comparison ends does not begin it again. */
  const setOffset = (offsetS: number): void => {
    if (workspace.getState().compare !== null) workspace.getState().set({ compare: { ...compare, offsetS } });
  };
  return (
    <>
      <CompareStack
        first={first}
        second={second}
        panes={panes}
        offsetS={compare.offsetS}
        visible={visible}
        cursorS={cursorS}
        guides={showGuides}
        wheel={wheel}
        theme={themeOf(settings)}
        units={units}
        onOffset={setOffset}
        onVisible={setVisible}
        onCursor={setCursorS}
      />
      <div className="offsetLine">
        <NumberField
          label={`${second.label} drawn later by`}
          unit="s"
          value={compare.offsetS}
          onValue={(offsetS) => setOffset(offsetS ?? 0)}
        />
        <Button look="quiet" onPress={() => setVisible({ startS: 0, endS: length })}>
          Whole length
        </Button>
      </div>
    </>
  );
}

function lengthOf({ window }: ComparedSide): number {
  return window.endS - window.startS;
}
