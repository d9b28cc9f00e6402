import { memo, useCallback, useRef } from 'react';
import type { Stage } from './stage.ts';
import type { TimeScale } from './timeScale.ts';
import type { ShownNote } from './traceStackProps.ts';
import { usePlacer } from './useStage.ts';
import { placeStrip } from './WindowStrips.tsx';

interface NoteFlagsProps {
  readonly stage: Stage;
  readonly notes: readonly ShownNote[];
  onSelectNote(id: string): void;
}

/** Notes as small flags on the lower edge of the panes; a note on a stretch has a bar as long as the stretch. */
export const NoteFlags = memo(function NoteFlags({ stage, notes, onSelectNote }: NoteFlagsProps) {
  const layer = useRef<HTMLDivElement>(null);
  const place = useCallback(
    (scale: TimeScale): void => {
      const flags = layer.current?.querySelectorAll<HTMLElement>('.noteFlag') ?? [];
      const bars = layer.current?.querySelectorAll<HTMLElement>('.noteBar') ?? [];
      notes.forEach(({ startS, endS }, i) => {
        const flag = flags[i];
        const bar = bars[i];
        const x = scale.xOf(startS);
        const seen = x >= scale.left && x <= scale.left + scale.width;
        if (flag !== undefined) {
          flag.style.visibility = seen ? '' : 'hidden';
          flag.style.transform = `translateX(${Math.round(x)}px)`;
        }
        if (bar !== undefined && endS !== null) placeStrip(bar, scale, startS, endS);
      });
    },
    [notes],
  );
  usePlacer(stage, place);
  return (
    <div className="noteFlags" ref={layer}>
      {notes.map((note) => (
        <div key={note.id} className="noteMark">
          <span className={note.endS === null ? 'noteBar none' : 'noteBar'} />
          <button
            type="button"
            className="noteFlag"
            aria-label={`Note at ${stage.moment(note.startS)}: ${note.words}`}
            title={note.words}
            onClick={() => onSelectNote(note.id)}
          >
            <svg width="24" height="26" viewBox="0 0 24 26" aria-hidden="true">
              <path className="flagPole" d="M0.5 0 V26" />
              <path className="flagCloth" d="M1 1.5 H17 L13.5 6.5 L17 11.5 H1 Z" />
            </svg>
          </button>
        </div>
      ))}
    </div>
  );
});
