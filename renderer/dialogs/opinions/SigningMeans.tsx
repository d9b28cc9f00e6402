import { SIGNING_DOES_NOT_SHOW, SIGNING_SHOWS } from '../../../core/evidence/words/opinions.ts';

/** What a signature shows and does not show, read before it is given. */
export function SigningMeans() {
  return (
    <div className="signingMeans">
      <p>
        <strong>Once signed it cannot be edited,</strong> only withdrawn in the open, and undo goes no further back than
        the signature. Your name and licence go wherever this record goes.
      </p>
      <p>{SIGNING_SHOWS}</p>
      <p>{SIGNING_DOES_NOT_SHOW}</p>
    </div>
  );
}
