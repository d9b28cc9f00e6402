import type { ReceivedBundle } from '../../../core/bridge/shellMessages.ts';
import { instantWords } from '../../words/times.ts';

/** What a bundle adds to the opinions here. Their findings are not told before they are taken over: one may read first. */
export function NewOpinions({ bundle }: { readonly bundle: ReceivedBundle }) {
  const { newOpinions, opinions, here } = bundle;
  if (here !== 'other' || opinions === 0) return null;
  if (newOpinions.length === 0) {
    return (
      <p>Nothing that is signed in it continues what was signed here, so its opinions cannot be taken over alone.</p>
    );
  }
  return (
    <section aria-label="New opinions" className="newOpinions">
      <p>
        <strong>It continues what was signed here.</strong> You may take over only what was signed since; your captures,
        windows and notes stay as they are, and undo goes no further back than that:
      </p>
      <ul>
        {newOpinions.map(({ id, kind, author, signedAt }) => (
          <li key={id}>
            {kind === 'opinion' ? 'An opinion' : 'A withdrawal'} of {author.name}, {instantWords(signedAt)}
          </li>
        ))}
      </ul>
    </section>
  );
}
