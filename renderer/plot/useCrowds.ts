import { useCallback, useMemo, useState } from 'react';
import { joinCrowds, type TabSubject } from './crowds.ts';
import type { Stage } from './stage.ts';
import type { TimeScale } from './timeScale.ts';
import type { ShownWindow } from './traceStackProps.ts';
import { usePlacer } from './useStage.ts';

/** What has a tab at this zoom. It is worked out again only when zooming joins others or takes them apart. */
export function useCrowds(
  stage: Stage,
  windows: readonly ShownWindow[],
  selectedId: string | null,
  lanes: number,
): readonly TabSubject[] {
  const [secondsPerPixel, setSecondsPerPixel] = useState(() => stage.scale?.secondsPerPixel ?? 0);
  const joined = useMemo(
    () => joinCrowds(windows, selectedId, secondsPerPixel, lanes),
    [windows, selectedId, secondsPerPixel, lanes],
  );
  const follow = useCallback(
    (scale: TimeScale): void => {
      const now = joinCrowds(windows, selectedId, scale.secondsPerPixel, lanes);
      if (now.length !== joined.length || now.some(({ id }, i) => id !== joined[i]?.id))
        setSecondsPerPixel(scale.secondsPerPixel);
    },
    [windows, selectedId, lanes, joined],
  );
  usePlacer(stage, follow);
  return joined;
}
