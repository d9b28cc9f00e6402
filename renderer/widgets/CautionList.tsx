import { TriangleAlert } from 'lucide-react';
import type { Caution } from '../words/cautions.ts';

/** Cautions where the work is done: a sign and plain sentences, never folded. */
export function CautionList({ cautions }: { readonly cautions: readonly Caution[] }) {
  if (cautions.length === 0) return null;
  return (
    <div className="caution" role="note" aria-label="Cautions">
      <TriangleAlert size={20} strokeWidth={1.6} aria-hidden="true" />
      <ul>
        {cautions.map(({ id, words }) => (
          <li key={id}>{words}</li>
        ))}
      </ul>
    </div>
  );
}
