import { useState } from 'react';
import type { ReceivedBundle } from '../../core/bridge/shellMessages.ts';
import { CORE_VERSION } from '../../core/version.ts';
import { showReceived, takeBundle, takeOpinions } from '../actions/receiveBundles.ts';
import { useProgram } from '../program/programContext.ts';
import { Button } from '../widgets/Button.tsx';
import { Dialog } from '../widgets/Dialog.tsx';
import { bytesWords, countWords } from '../words/numbers.ts';
import { instantWords } from '../words/times.ts';
import { Problems } from '../workspace/Problems.tsx';
import { ManifestHash } from './ManifestHash.tsx';
import { NewOpinions } from './opinions/NewOpinions.tsx';
import { ReadingOrder } from './ReadingOrder.tsx';

interface ReceivedDialogProps {
  /** The first is shown; the others follow when it goes. */
  readonly bundles: readonly [ReceivedBundle, ...ReceivedBundle[]];
}

/**
 * What is proposed: blind first, except to who has the vehicle or wrote something in it, for they have seen most of it. Of a
 * vehicle that was deleted nothing is remembered, neither that it was here nor what was seen of it: deleting it for good is a
 * promise, and a list of what was deleted would break it. So its bundle is as new as a stranger's; the person may choose.
 */
export function readsBlindFirst({ here, writers }: Pick<ReceivedBundle, 'here' | 'writers'>, reader: string): boolean {
  return here === 'nothing' && !writers.includes(reader.trim());
}

const TAKE_WORDS: Readonly<Record<ReceivedBundle['here'], string>> = {
  nothing: 'Take it in',
  other: 'Take it in beside mine',
  same: 'Open mine',
  unreadable: 'Take it in',
};

/** What is in a bundle from a colleague, and whether it is the one that was handed over, before it is taken in. */
export function ReceivedDialog({ bundles }: ReceivedDialogProps) {
  const program = useProgram();
  const [bundle, ...others] = bundles;
  const [taking, setTaking] = useState(false);
  const [blind, setBlind] = useState(() => readsBlindFirst(bundle, program.settings.getState().settings.reader));
  const take = async (deed: () => Promise<boolean>): Promise<void> => {
    setTaking(true);
    const taken = await deed().finally(() => setTaking(false));
    if (taken) showReceived(program, others);
  };
  return (
    <Dialog
      title={`Bundle: ${bundle.vehicle}`}
      lead={`Every file in ${bundle.name} is as it was when the bundle was made.`}
      width="wide"
      onClose={() => showReceived(program, others)}
      foot={
        <>
          <Button onPress={() => showReceived(program, others)}>Leave it</Button>
          {bundle.newOpinions.length > 0 && (
            <Button
              look="outline"
              reason={taking ? 'It is being taken in.' : null}
              onPress={() => void take(() => takeOpinions(program, bundle))}
            >
              Take over the opinions
            </Button>
          )}
          <Button
            look="main"
            reason={taking ? 'It is being taken in.' : reasonAgainst(bundle)}
            onPress={() => void take(() => takeBundle(program, bundle, blind))}
          >
            {TAKE_WORDS[bundle.here]}
          </Button>
        </>
      }
    >
      <Problems places={['open', 'vehicle', 'save']} />
      <ManifestHash sha256={bundle.manifestSha256} />
      <p>
        Compare it with the hash that you were told on another path. Where the two differ, this is not the bundle that
        was handed over. The hash does not show who made the bundle, or that nothing was left out of it.
      </p>
      <Contents bundle={bundle} />
      {bundle.otherCore && (
        <p>
          Its findings were made by version {bundle.coreVersion} of the core; this is version {CORE_VERSION}. They are
          worked out again here and may come out differently; both are shown.
        </p>
      )}
      {hereWords(bundle) !== null && <p>{hereWords(bundle)}</p>}
      <NewOpinions bundle={bundle} />
      {(bundle.here === 'nothing' || bundle.here === 'other') && <ReadingOrder blind={blind} onBlind={setBlind} />}
    </Dialog>
  );
}

function Contents({ bundle }: { readonly bundle: ReceivedBundle }) {
  const { captures, windows, notes, readings, opinions, madeAt } = bundle;
  return (
    <table className="plainTable">
      <tbody>
        <tr>
          <th scope="row">Made</th>
          <td>{instantWords(madeAt)}, by the clock of the computer that made it</td>
        </tr>
        <tr>
          <th scope="row">Captures</th>
          <td>
            {captures.length === 0 && 'none'}
            {captures.map(({ id, name, bytes, enclosed }) => (
              <p key={id}>{`${name}, ${enclosed ? bytesWords(bytes) : 'not in the bundle'}`}</p>
            ))}
          </td>
        </tr>
        <tr>
          <th scope="row">Marked</th>
          <td>
            {[
              countWords(windows, 'window'),
              countWords(notes, 'note'),
              countWords(readings, 'temperature reading'),
              countWords(opinions, 'signed entry', 'signed entries'),
            ].join(', ')}
          </td>
        </tr>
      </tbody>
    </table>
  );
}

function hereWords({ here, vehicle }: ReceivedBundle): string | null {
  if (here === 'other') {
    return `You have ${vehicle} already. Yours stays as it is: the bundle becomes a vehicle of its own beside it, with the day in its name.`;
  }
  return here === 'same' ? `You have ${vehicle} already, with the very same record.` : null;
}

function reasonAgainst({ here }: ReceivedBundle): string | null {
  return here === 'unreadable'
    ? 'You have this vehicle already, and its newest save is damaged: open it and choose an earlier save first.'
    : null;
}
