import type { WindowScore } from '../../core/findings/finding.ts';
import { Blockers } from './Blockers.tsx';
import { Conditions } from './Conditions.tsx';
import { Measures } from './Measures.tsx';
import { NextTests } from './NextTests.tsx';
import { Reasons } from './Reasons.tsx';
import { Result } from './Result.tsx';

/** A window's score in the order of a laboratory report: result, what stands in the way, why, next, conditions, numbers. */
export function ScoreSheet({ score }: { readonly score: WindowScore }) {
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
