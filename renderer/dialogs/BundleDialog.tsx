import { Download, FolderOpen, X } from 'lucide-react';
import { useCallback, useEffect, useState } from 'react';
import { useStore } from 'zustand';
import type { WeighedCapture } from '../../core/bridge/shellMessages.ts';
import { BUNDLE_LIMITS } from '../../core/evidence/bundle/unpackBundle.ts';
import { type Included, NOTHING_PRIVATE } from '../../core/evidence/sheetInput.ts';
import { capturesInOrder } from '../../core/record/inOrder.ts';
import type { CaptureRef } from '../../core/record/schema.ts';
import { exportBundle, type WrittenBundle, weighCaptures } from '../actions/exportBundle.ts';
import { useProgram } from '../program/programContext.ts';
import { recordOf } from '../state/recordStore.ts';
import { Button } from '../widgets/Button.tsx';
import { Dialog } from '../widgets/Dialog.tsx';
import { bytesWords, countWords } from '../words/numbers.ts';
import { Problems } from '../workspace/Problems.tsx';
import { BundleCaptures } from './BundleCaptures.tsx';
import type { DialogProps } from './dialogProps.ts';
import { ManifestHash } from './ManifestHash.tsx';
import { PrivateChoices } from './PrivateChoices.tsx';

type Weighed = ReadonlyMap<string, WeighedCapture>;

/** What a second reader gets: captures, record and sheet in one file. Nothing is left out in silence. */
export function BundleDialog({ onClose }: DialogProps) {
  const program = useProgram();
  const record = useStore(program.record, recordOf);
  const scoring = useStore(program.score, (state) => state.pending);
  const [include, setInclude] = useState<Included>(NOTHING_PRIVATE);
  const [without, setWithout] = useState<ReadonlySet<string>>(new Set());
  const [weighed, setWeighed] = useState<Weighed | null>(null);
  const [packing, setPacking] = useState(false);
  const [written, setWritten] = useState<WrittenBundle | null>(null);
  const captures = record === null ? [] : capturesInOrder(record);

  const weigh = useCallback(async (): Promise<void> => {
    const vehicle = recordOf(program.record.getState());
    if (vehicle !== null) setWeighed(await weighCaptures(program, Object.values(vehicle.captures)));
  }, [program]);
  useEffect(() => void weigh(), [weigh]);
  useEffect(() => () => void program.shell.cancelBundle(null), [program]);

  const signed = Object.keys(record?.opinions ?? {}).length > 0;
  const going = captures.filter(({ id }) => !without.has(id));
  const reason = packing ? 'It is being packed.' : reasonAgainst(going, weighed, scoring);
  const change = (next: () => void): void => {
    setWritten(null); // what was written is no longer what is chosen
    next();
  };
  const write = async (): Promise<void> => {
    setPacking(true);
    setWritten(null);
    const ids = going.map(({ id }) => id);
    setWritten(await exportBundle(program, include, ids).finally(() => setPacking(false)));
  };

  return (
    <Dialog
      title="Bundle for a second reader"
      lead="One file for a colleague, who sees the same captures, windows and notes, works the same numbers out again, and may disagree in writing."
      width="wide"
      onClose={onClose}
      foot={
        <>
          {written !== null && (
            <Button look="quiet" icon={FolderOpen} className="push" onPress={() => void program.shell.showExport(null)}>
              Show in its folder
            </Button>
          )}
          {packing && (
            <Button icon={X} label="Cancel packing" onPress={() => void program.shell.cancelBundle(null)}>
              Cancel
            </Button>
          )}
          <Button look="main" icon={Download} reason={reason} onPress={() => void write()}>
            {packing ? 'Packing' : 'Write the bundle'}
          </Button>
        </>
      }
    >
      <Problems places={['export', 'locate']} />
      {written !== null && <Written written={written} />}
      <div className="bundlePage">
        <fieldset className="sheetChoices">
          <legend>Captures</legend>
          {captures.length === 0 && <p className="soft">This vehicle has no captures.</p>}
          <BundleCaptures
            captures={captures}
            weighed={weighed}
            without={without}
            onWithout={(id, out) => change(() => setWithout(changed(without, id, out)))}
            onFound={() => void weigh()}
          />
          <p className="soft">
            {countWords(going.length, 'capture')}, {bytesWords(sumOf(going))}; a bundle holds{' '}
            {bytesWords(BUNDLE_LIMITS.bytes)} at most. With them go the record of the vehicle and its evidence sheet.
          </p>
        </fieldset>
        <fieldset className="sheetChoices">
          <legend>Put in, too</legend>
          <PrivateChoices include={include} onInclude={(next) => change(() => setInclude(next))} />
          <p className="soft">What is not ticked is left out of the record and of the sheet, which says so.</p>
          {signed && (
            <p className="soft">
              Signed opinions go in whole, with the names under them: without those their chain would not hold.
            </p>
          )}
        </fieldset>
      </div>
    </Dialog>
  );
}

function Written({ written }: { readonly written: WrittenBundle }) {
  return (
    <section aria-label="What was written" className="bundleWritten" role="status">
      <p>
        <strong>{written.name} was written.</strong> Tell this hash on another path at once, on paper or in a message:
      </p>
      <ManifestHash sha256={written.manifestSha256} />
      <p>
        It shows whether the files are still those the bundle was made for, and that the numbers follow from them. It
        does not show who made the bundle, when, that a recording came from this vehicle, or that nothing was left out:
        whoever can change the files can make a new manifest.
      </p>
    </section>
  );
}

/** Why the bundle cannot be written now, or null. */
function reasonAgainst(going: readonly CaptureRef[], weighed: Weighed | null, scoring: boolean): string | null {
  if (scoring) return 'The vehicle is still being scored.';
  if (weighed === null) return 'Its captures are being looked through.';
  const total = sumOf(going);
  if (total > BUNDLE_LIMITS.bytes) {
    return `These captures come to ${bytesWords(total)}, more than a bundle holds: untick one, and hand its file over beside the bundle.`;
  }
  const missing = going.filter(({ id }) => weighed.get(id)?.state !== 'ready').map(({ name }) => name);
  return missing.length === 0 ? null : `Say where ${missing.join(', ')} is, or go on without it.`;
}

function sumOf(captures: readonly CaptureRef[]): number {
  return captures.reduce((sum, { bytes }) => sum + bytes, 0);
}

function changed(set: ReadonlySet<string>, entry: string, inside: boolean): ReadonlySet<string> {
  const others = [...set].filter((one) => one !== entry);
  return new Set(inside ? [...others, entry] : others);
}
