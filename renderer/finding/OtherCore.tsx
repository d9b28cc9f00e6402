import { useStore } from 'zustand';
import { useProgram } from '../program/programContext.ts';
import { instantWords } from '../words/times.ts';

/** What another version of the core found, beside what this one finds; nothing where this one made all that was kept. */
export function OtherCore({ findingId }: { readonly findingId: string }) {
  const { score } = useProgram();
  const kept = useStore(score, (state) => state.byOtherCore[findingId]);
  if (kept === undefined) return null;
  return (
    <p className="otherCore">
      Version {kept.coreVersion} of the core found on {instantWords(kept.madeAt)}: {kept.sentence}
    </p>
  );
}
