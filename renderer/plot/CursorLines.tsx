import { memo, useLayoutEffect, useRef } from 'react';
import { clockWords } from './axisWords.ts';
import type { Stage } from './stage.ts';

/** Widest a figure gets at the size of the words, px. */
const CHARACTER_PX = 8;

interface CursorLinesProps {
  readonly stage: Stage;
  readonly startClock: string | null;
}

/** One line through all panes for each cursor, and under it the time from the start and by the clock. */
export const CursorLines = memo(function CursorLines({ stage, startClock }: CursorLinesProps) {
  return (
    <>
      <CursorLine stage={stage} startClock={startClock} which="first" />
      <CursorLine stage={stage} startClock={startClock} which="second" />
    </>
  );
});

function CursorLine({ stage, startClock, which }: CursorLinesProps & { readonly which: 'first' | 'second' }) {
  const line = useRef<HTMLDivElement>(null);
  const words = useRef<HTMLSpanElement>(null);

  useLayoutEffect(() => {
    const place = (): void => {
      const { scale } = stage;
      const timeS = which === 'first' ? stage.cursorS : stage.secondCursorS;
      const seen = scale !== null && timeS !== null && timeS >= scale.startS && timeS <= scale.endS;
      if (line.current === null || words.current === null) return;
      line.current.style.visibility = seen ? '' : 'hidden';
      if (!seen) return;
      const x = Math.round(scale.xOf(timeS));
      line.current.style.transform = `translateX(${x}px)`;
      const clock = clockWords(startClock, timeS, stage.digits);
      const text = clock === null ? stage.moment(timeS) : `${stage.moment(timeS)} · ${clock}`;
      words.current.textContent = text;
      // The width is reckoned, not measured: measuring would make the page lay itself out while the hand moves.
      const turned = scale.left + scale.width - x < text.length * CHARACTER_PX + 12;
      line.current.classList.toggle('turned', turned);
    };
    place();
    const leaveCursor = stage.onCursors(place);
    const leaveScale = stage.addPlacer(place);
    return () => {
      leaveCursor();
      leaveScale();
    };
  }, [stage, startClock, which]);

  return (
    <div ref={line} className={`cursorLine ${which}`} aria-hidden="true">
      <span ref={words} className="cursorWords" />
    </div>
  );
}
