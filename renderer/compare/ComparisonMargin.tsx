import { useStore } from 'zustand';
import { useProgram } from '../program/programContext.ts';
import { ScrollStop } from '../widgets/ScrollStop.tsx';
import { ComparisonTable } from './ComparisonTable.tsx';
import { useComparedSides } from './useComparedSides.ts';
import { useComparison } from './useComparison.ts';

/** The measures of both windows beside the traces, while two are compared. */
export function ComparisonMargin() {
  const { workspace } = useProgram();
  const compare = useStore(workspace, (state) => state.compare);
  const sides = useComparedSides(compare?.firstId ?? '', compare?.secondId ?? '');
  const answer = useComparison(compare?.firstId ?? '', compare?.secondId ?? '');
  return (
    <aside className="margin right" aria-label="Measures side by side">
      <ScrollStop label="Measures" className="report scroll">
        <h2>Side by side</h2>
        {answer?.ok === true && sides !== null && (
          <ComparisonTable comparison={answer.value} first={sides[0].label} second={sides[1].label} />
        )}
      </ScrollStop>
    </aside>
  );
}
