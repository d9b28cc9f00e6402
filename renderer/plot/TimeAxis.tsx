import { useLayoutEffect, useRef } from 'react';
import type { Theme } from '../style/traceColours.ts';
import type { TimeForm } from '../words/captureTimes.ts';
import type { Stage } from './stage.ts';
import { TimeAxisSurface } from './timeAxisSurface.ts';

interface TimeAxisProps {
  readonly stage: Stage;
  readonly theme: Theme;
}

/** As much as fits left of the paper: the form of the longer ones says by itself that it is a time. */
const AXIS_WORDS: Readonly<Record<TimeForm, string>> = { s: 'Time, s', 'min:s': 'min:s', 'h:min:s': 'h:min:s' };

/** The time axis under all panes. */
export function TimeAxis({ stage, theme }: TimeAxisProps) {
  const host = useRef<HTMLDivElement>(null);
  const surface = useRef<TimeAxisSurface | null>(null);

  useLayoutEffect(() => {
    if (host.current === null) return undefined;
    const made = new TimeAxisSurface(host.current, getComputedStyle(host.current).fontFamily);
    surface.current = made;
    const leave = stage.addDrawing(made);
    return () => {
      leave();
      made.close();
      surface.current = null;
    };
  }, [stage]);

  useLayoutEffect(() => {
    if (surface.current === null) return;
    surface.current.theme = theme;
    stage.markStale(surface.current);
  }, [stage, theme]);

  return (
    <div className="timeAxis" ref={host} aria-hidden="true">
      <span className="timeAxisWords">{AXIS_WORDS[stage.form]}</span>
    </div>
  );
}
