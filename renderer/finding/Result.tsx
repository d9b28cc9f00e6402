import { givenProbability, sureSentence } from '../../core/evidence/words/sure.ts';
import { FINDING_WORDS } from '../../core/evidence/words/terms.ts';
import type { Finding } from '../../core/findings/finding.ts';
import { FindingSign } from '../widgets/Sign.tsx';

interface ResultProps {
  readonly finding: Finding;
  readonly probabilityNotStoring: number | null;
}

/** The finding in words, how sure, and where that lies between the two certainties. */
export function Result({ finding, probabilityNotStoring }: ResultProps) {
  const given = givenProbability(finding, probabilityNotStoring);
  return (
    <section className="result" aria-label="Finding">
      <p className={`resultWords ${finding}`}>
        <FindingSign finding={finding} size={28} />
        <strong>{FINDING_WORDS[finding]}</strong>
      </p>
      <p>{sureSentence(finding, probabilityNotStoring, '.')}</p>
      {given !== null && <Scale probability={given} />}
    </section>
  );
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
