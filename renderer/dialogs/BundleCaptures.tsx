import type { WeighedCapture } from '../../core/bridge/shellMessages.ts';
import type { CaptureRef } from '../../core/record/schema.ts';
import { locateCapture } from '../actions/findCaptures.ts';
import { useProgram } from '../program/programContext.ts';
import { Button } from '../widgets/Button.tsx';
import { CheckField } from '../widgets/CheckField.tsx';
import { bytesWords } from '../words/numbers.ts';

const MISSING_WORDS: Readonly<Record<WeighedCapture['state'], string>> = {
  ready: '',
  notFound: 'was not found where it was.',
  changed: 'has changed since it was recorded here, so it can prove nothing.',
  unread: 'could not be read.',
};

interface BundleCapturesProps {
  readonly captures: readonly CaptureRef[];
  /** Null while they are looked through. */
  readonly weighed: ReadonlyMap<string, WeighedCapture> | null;
  /** Captures that stay out by the person's own choice. */
  readonly without: ReadonlySet<string>;
  onWithout(captureId: string, out: boolean): void;
  /** A file was found again: look once more. */
  onFound(): void;
}

/** The captures of the vehicle: those that go in, and those that cannot, each with what to do about it. */
export function BundleCaptures({ captures, weighed, without, onWithout, onFound }: BundleCapturesProps) {
  const program = useProgram();
  return (
    <ul className="bundleCaptures">
      {captures.map((capture) => {
        const { id, name, bytes } = capture;
        const found = weighed?.get(id);
        if (found === undefined || found.state === 'ready') {
          const out = without.has(id);
          return (
            <li key={id}>
              <CheckField
                label={`${name}, ${bytesWords(bytes)}`}
                checked={!out}
                {...hintOf(found)}
                onChecked={(checked) => onWithout(id, !checked)}
              />
            </li>
          );
        }
        return (
          <li key={id} className="bundleMissing" data-missing={found.state}>
            <p>
              {name} {MISSING_WORDS[found.state]}
            </p>
            <CheckField
              label={`Go on without ${name}`}
              checked={without.has(id)}
              onChecked={(checked) => onWithout(id, checked)}
            />
            <Button label={`Say where ${name} is`} onPress={() => void locateCapture(program, id).then(onFound)}>
              Say where it is
            </Button>
          </li>
        );
      })}
    </ul>
  );
}

function hintOf(found: WeighedCapture | undefined): { hint?: string } {
  if (found === undefined || found.vehicleNumbers === 0) return {};
  return {
    hint: 'Its file holds what looks like a vehicle number, and goes in exactly as it is. Untick it where that may not be.',
  };
}
