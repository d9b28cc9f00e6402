import { X } from 'lucide-react';
import { useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import type { Comparison } from '../../core/compare/comparison.ts';
import { CompareStack } from '../plot/CompareStack.tsx';
import type { ComparedSide } from '../plot/compareStackProps.ts';
import { useProgram } from '../program/programContext.ts';
import { recordOf } from '../state/recordStore.ts';
import { captureWindow } from '../state/selectors/captureWindow.ts';
import { themeOf } from '../state/settingsStore.ts';
import type { ViewState } from '../state/viewState.ts';
import { Button } from '../widgets/Button.tsx';
import { NumberField } from '../widgets/NumberField.tsx';
import { ComparisonTable } from './ComparisonTable.tsx';
import { comparedPanes } from './comparedPanes.ts';
import { useComparedSides } from './useComparedSides.ts';

/** Short enough at first to see the single switches; one press shows the whole length. */
const READABLE_S = 20;

type Compare = NonNullable<ViewState['compare']>;

/** A window over another: first what was not alike, then the traces, then the measures side by side. */
export function ComparePage({ compare }: { readonly compare: Compare }) {
  const { workspace } = useProgram();
  const sides = useComparedSides(compare.firstId, compare.secondId);
  const comparison = useComparison(compare.firstId, compare.secondId);
  const end = (): void => workspace.getState().set({ compare: null });
  return (
    <section className="comparePage" aria-label="Comparison">
      <div className="compareHead">
        <h2>{comparison?.sentence ?? 'Comparing.'}</h2>
        <Button icon={X} look="outline" onPress={end}>
          End comparison
        </Button>
      </div>
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
      {comparison !== null && sides !== null && (
        <ComparisonTable comparison={comparison} first={sides[0].label} second={sides[1].label} />
      )}
    </section>
  );
}

interface ComparedTracesProps {
  readonly compare: Compare;
  readonly first: ComparedSide;
  readonly second: ComparedSide;
}

function ComparedTraces({ compare, first, second }: ComparedTracesProps) {
  const { workspace, settings: settingsStore } = useProgram();
  const settings = useStore(settingsStore);
  const { wheel, showGuides, temperatureUnit, speedUnit } = settings.settings;
  const length = Math.max(lengthOf(first), lengthOf(second));
  const [visible, setVisible] = useState({ startS: 0, endS: Math.min(READABLE_S, length) });
  const [cursorS, setCursorS] = useState<number | null>(null);
  const panes = useMemo(() => comparedPanes(first.capture, second.capture), [first.capture, second.capture]);
  const units = useMemo(() => ({ temperature: temperatureUnit, speed: speedUnit }), [temperatureUnit, speedUnit]);
  const setOffset = (offsetS: number): void => workspace.getState().set({ compare: { ...compare, offsetS } });
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

/** What the core says of the two windows, again whenever one of them is moved. */
function useComparison(firstId: string, secondId: string): Comparison | null {
  const { core, record: store, captures } = useProgram();
  const first = useStore(store, (state) => recordOf(state)?.windows[firstId]);
  const second = useStore(store, (state) => recordOf(state)?.windows[secondId]);
  const firstKey = useStore(captures, (state) => state.held[first?.captureId ?? '']?.summary.key);
  const secondKey = useStore(captures, (state) => state.held[second?.captureId ?? '']?.summary.key);
  const [comparison, setComparison] = useState<Comparison | null>(null);
  useEffect(() => {
    if (first === undefined || second === undefined || firstKey === undefined || secondKey === undefined) return;
    let latest = true;
    void core
      .ask('compare', {
        first: { key: firstKey, window: captureWindow(first) },
        second: { key: secondKey, window: captureWindow(second) },
      })
      .then((outcome) => latest && outcome.ok && setComparison(outcome.value));
    return () => {
      latest = false;
    };
  }, [core, first, second, firstKey, secondKey]);
  return comparison;
}
