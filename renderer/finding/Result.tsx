import { FINDING_WORDS } from '../../core/evidence/words/terms.ts';
import type { Finding } from '../../core/findings/finding.ts';
import { FindingSign } from '../widgets/Sign.tsx';
import { probabilityWords } from '../words/numbers.ts';

interface ResultProps {
  readonly finding: Finding;
  readonly probabilityNotStoring: number | null;
}

/** The finding in words, how sure, and where that lies between the two certainties. */
export function Result({ finding, probabilityNotStoring }: ResultProps) {
  return (
    <section className="result" aria-label="Finding">
      <p className={`resultWords ${finding}`}>
        <FindingSign finding={finding} size={28} />
        <strong>{FINDING_WORDS[finding]}</strong>
      </p>
      <p>{sureWords(finding, probabilityNotStoring)}</p>
      {probabilityNotStoring !== null && finding !== 'cannotTell' && <Scale probability={probabilityNotStoring} />}
    </section>
  );
}

function sureWords(finding: Finding, probability: number | null): string {
  if (probability === null || finding === 'cannotTell')
    return 'No probability is given while something stands in the way.';
  if (finding === 'storing') return `${probabilityWords(1 - probability)} sure that it stores oxygen.`;
  if (finding === 'notStoring') return `${probabilityWords(probability)} sure that it does not store oxygen.`;
  return `That it does not store oxygen has a probability of ${probabilityWords(probability)}.`;
}

/** A rule from "stores" to "does not store" with a mark where the probability lies. */
function Scale({ probability }: { readonly probability: number }) {
  return (
    <div className="scale" aria-hidden="true">
      <div className="scaleRule">
        <span className="scaleMark" style={{ left: `${probability * 100}%` }} />
      </div>
      <div className="scaleWords">
        <span>stores</span>
        <span>does not store</span>
      </div>
    </div>
  );
}
