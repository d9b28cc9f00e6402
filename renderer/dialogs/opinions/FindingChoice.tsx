import { useId } from 'react';
import { FINDING_WORDS } from '../../../core/evidence/words/terms.ts';
import { FINDINGS, type Finding } from '../../../core/findings/finding.ts';
import { FindingSign } from '../../widgets/Sign.tsx';

interface FindingChoiceProps {
  /** Null until one is chosen: none is suggested. */
  readonly chosen: Finding | null;
  onChoose(finding: Finding): void;
}

/** One of the four findings, in the words and signs that they have everywhere. */
export function FindingChoice({ chosen, onChoose }: FindingChoiceProps) {
  const name = useId();
  return (
    <fieldset className="findingChoice">
      <legend>Your finding</legend>
      {FINDINGS.map((finding) => (
        <label key={finding}>
          <input
            type="radio"
            name={name}
            value={finding}
            checked={chosen === finding}
            data-autofocus={finding === (chosen ?? FINDINGS[0]) || undefined}
            onChange={() => onChoose(finding)}
          />
          <FindingSign finding={finding} />
          {FINDING_WORDS[finding]}
        </label>
      ))}
    </fieldset>
  );
}
