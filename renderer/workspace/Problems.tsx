import { useStore } from 'zustand';
import { useShallow } from 'zustand/react/shallow';
import { useProgram } from '../program/programContext.ts';
import type { ProblemPlace } from '../state/noticeStore.ts';
import { ProblemNote } from '../widgets/ProblemNote.tsx';

/** What went wrong at a place of the page, a sentence each, until it is dismissed or no longer true. */
export function Problems({ places }: { readonly places: readonly ProblemPlace[] }) {
  const { notices } = useProgram();
  const shown = useStore(
    notices,
    useShallow((state) => state.problems.filter((one) => places.includes(one.place))),
  );
  if (shown.length === 0) return null;
  return (
    <div className="problems">
      {shown.map(({ key, problem }) => (
        <ProblemNote key={key} problem={problem} onDismiss={() => notices.getState().dismiss(key)} />
      ))}
    </div>
  );
}
