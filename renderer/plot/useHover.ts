import { type RefObject, useEffect } from 'react';
import type { Stage } from './stage.ts';

/** The cursor follows the pointer over the panes, and stays where it was when the pointer leaves. */
export function useHover(
  stage: Stage,
  field: RefObject<HTMLElement | null>,
  latest: RefObject<{ onCursor(timeS: number | null): void }>,
): void {
  useEffect(() => {
    const box = field.current;
    if (box === null) return undefined;
    const onMove = (event: PointerEvent): void => {
      const { scale } = stage;
      if (scale === null) return;
      const x = event.clientX - box.getBoundingClientRect().left;
      if (x < scale.left || x > scale.left + scale.width) return;
      const timeS = scale.timeOf(x);
      stage.setCursor(timeS);
      latest.current.onCursor(timeS);
    };
    box.addEventListener('pointermove', onMove);
    return () => box.removeEventListener('pointermove', onMove);
  }, [stage, field, latest]);
}
