import {
  coreSaidWords,
  DISAGREEMENT_WORDS,
  LINK_SENTENCES,
  lookingWords,
  restingWords,
  sureWords,
} from '../../../core/evidence/words/opinions.ts';
import { FINDING_WORDS } from '../../../core/evidence/words/terms.ts';
import type { CheckedLink } from '../../../core/opinions/chain.ts';
import type { Opinion, Withdrawal } from '../../../core/record/opinionSchema.ts';
import type { VehicleRecord } from '../../../core/record/schema.ts';
import { ChainSign } from '../../widgets/ChainSign.tsx';
import { FindingSign } from '../../widgets/Sign.tsx';
import { instantWords } from '../../words/times.ts';

interface OpinionReportProps {
  readonly opinion: Opinion;
  readonly record: VehicleRecord;
  /** Its place in the chain; null while that is checked. */
  readonly link: CheckedLink | null;
  readonly withdrawn: Withdrawal | null;
}

/** One opinion in whole. */
export function OpinionReport({ opinion, record, link, withdrawn }: OpinionReportProps) {
  const { author, finding, signedAt, coreVersion, reasons, nextTest, windows } = opinion;
  const looking = lookingWords(opinion);
  return (
    <article className="opinion" aria-label={`Opinion of ${author.name}`} data-opinion={opinion.id}>
      <p className={`resultWords ${finding}`}>
        <FindingSign finding={finding} size={24} />
        <strong>{FINDING_WORDS[finding]}</strong>
      </p>
      <p>{sureWords(opinion)}</p>
      {withdrawn !== null && <Withdrawn withdrawn={withdrawn} />}
      <dl className="opinionFacts">
        <dt>Signed</dt>
        <dd>
          {author.name}
          {author.licence !== '' && `, ${author.licence}`}, {instantWords(signedAt)}, version {coreVersion}
          {looking !== null && `; ${looking}`}
        </dd>
        {opinion.answers !== null && (
          <>
            <dt>Answers</dt>
            <dd>{answerWords(opinion, record)}</dd>
          </>
        )}
        <dt>Reasons</dt>
        <dd className="noteText">{reasons === '' ? 'none given' : reasons}</dd>
        <dt>The test that would settle it</dt>
        <dd className="noteText">{nextTest === '' ? 'none named' : nextTest}</dd>
        <dt>Rests on</dt>
        <dd>
          {windows.length === 0 && 'no window'}
          <ul>
            {windows.map((window) => (
              <li key={`${window.captureSha256} ${window.startS} ${window.endS} ${window.bank} ${window.kind}`}>
                {restingWords(window, record, '.')}. The core then: {coreSaidWords(window, '.')}.
              </li>
            ))}
          </ul>
        </dd>
        {link !== null && (
          <>
            <dt>
              <ChainSign state={link.state} />
            </dt>
            <dd>
              {LINK_SENTENCES[link.state]}{' '}
              {link.sameRecord
                ? 'The record still is what its signer was given.'
                : 'The record here is not what its signer was given: it has been worked on since, or came another way.'}
            </dd>
          </>
        )}
      </dl>
    </article>
  );
}

function Withdrawn({ withdrawn }: { readonly withdrawn: Withdrawal }) {
  return (
    <p className="withdrawn">
      <strong>
        Withdrawn by {withdrawn.author.name}, {instantWords(withdrawn.signedAt)}:
      </strong>{' '}
      {withdrawn.reason}
    </p>
  );
}

function answerWords({ answers, disagreement }: Opinion, { opinions }: VehicleRecord): string {
  const other = answers === null ? undefined : opinions[answers];
  const whom =
    other === undefined ? 'an opinion that is not here' : `${other.author.name}, ${instantWords(other.signedAt)}`;
  return disagreement === null ? whom : `${whom}; disagrees because ${DISAGREEMENT_WORDS[disagreement]}`;
}
