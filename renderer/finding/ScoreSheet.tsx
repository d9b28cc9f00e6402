import { bankWords } from '../../core/evidence/words/terms.ts';
import type { WindowScore } from '../../core/findings/finding.ts';
import { startSentence } from '../../core/words/numbers.ts';
import { Blockers } from './Blockers.tsx';
import { Conditions } from './Conditions.tsx';
import { Measures } from './Measures.tsx';
import { NextTests } from './NextTests.tsx';
import { Reasons } from './Reasons.tsx';
import { Result } from './Result.tsx';

/** A sheet for each bank a window speaks of; which bank is said where there are several. */
export function ScoreSheets({ scores }: { readonly scores: readonly WindowScore[] }) {
  if (scores.length === 1) return scores.map((score) => <ScoreSheet key={score.bank} score={score} />);
  return scores.map((score) => (
    <section key={score.bank} className="reportPart ofBank">
      <h2>{startSentence(bankWords(score.bank))}</h2>
      <ScoreSheet score={score} />
    </section>
  ));
}

/** A window's score in the order of a laboratory report: result, what stands in the way, why, next, conditions, numbers. */
function ScoreSheet({ score }: { readonly score: WindowScore }) {
  return (
    <>
      <Result finding={score.finding} probabilityNotStoring={score.probabilityNotStoring} />
      <Blockers blockers={score.blockers} />
      <Reasons reasons={score.reasons} finding={score.finding} />
      <NextTests tests={score.nextTests} />
      <Conditions conditions={score.conditions} />
      <Measures measures={score.measures} />
    </>
  );
}
