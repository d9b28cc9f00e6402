import type { Stretch } from '../../core/windows/window.ts';
import { KEPT_SPACE, numberWords } from '../words/numbers.ts';
import { type Signal, useSignal } from './signal.ts';
import type { Stage } from './stage.ts';
import { usePlacedStrip } from './WindowStrips.tsx';

interface MarkPreviewProps {
  readonly stage: Stage;
  readonly preview: Signal<Stretch | null>;
}

/** The stretch that is being dragged, with how long it is, until the pointer comes up. */
export function MarkPreview({ stage, preview }: MarkPreviewProps) {
  const stretch = useSignal(preview);
  const strip = usePlacedStrip(stage, stretch);
  if (stretch === null) return null;
  return (
    <div className="markPreview" ref={strip}>
      <output className="markWords">
        {numberWords(stretch.endS - stretch.startS, stage.digits)}
        {KEPT_SPACE}s
      </output>
    </div>
  );
}
