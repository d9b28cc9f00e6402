import { useCallback, useRef } from 'react';
import type { OverviewProps } from './overviewProps.ts';
import type { Stage } from './stage.ts';
import type { TimeScale } from './timeScale.ts';
import { usePlacer } from './useStage.ts';
import { placeStrip } from './WindowStrips.tsx';

type StripMarksProps = Pick<OverviewProps, 'windows' | 'notes' | 'selectedWindowId'> & { readonly stage: Stage };

/** Windows and notes as marks on the strip. Their names are in the tabs and flags; here it is their place that counts. */
export function StripMarks({ stage, windows, notes, selectedWindowId }: StripMarksProps) {
  const layer = useRef<HTMLDivElement>(null);
  const place = useCallback(
    (scale: TimeScale): void => {
      const marks = layer.current?.children ?? [];
      const stretches = [...windows, ...notes.map(({ startS, endS }) => ({ startS, endS: endS ?? startS }))];
      stretches.forEach(({ startS, endS }, i) => {
        const mark = marks[i];
        if (mark instanceof HTMLElement) placeStrip(mark, scale, startS, endS);
      });
    },
    [windows, notes],
  );
  usePlacer(stage, place);
  return (
    <div className="overviewMarks" ref={layer} aria-hidden="true">
      {windows.map(({ id, offer }) => (
        <span
          key={id}
          className={`overviewMark${offer ? ' offer' : ''}${id === selectedWindowId ? ' selected' : ''}`}
        />
      ))}
      {notes.map(({ id }) => (
        <span key={id} className="overviewMark note" />
      ))}
    </div>
  );
}
