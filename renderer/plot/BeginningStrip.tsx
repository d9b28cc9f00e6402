import { useMemo, useRef } from 'react';
import './traces.css';
import type { CaptureOutline } from '../../core/bridge/coreMessages.ts';
import { timeForm } from '../words/captureTimes.ts';
import { StripTraces } from './StripTraces.tsx';
import { TimeAxis } from './TimeAxis.tsx';
import { themeVariables } from './themeVariables.ts';
import type { TraceSource } from './traceStackProps.ts';
import { useStage } from './useStage.ts';

interface BeginningStripProps {
  readonly capture: CaptureOutline;
  /** Must be the same object from render to render. */
  readonly source: TraceSource;
  readonly channelIds: readonly string[];
  readonly theme: 'light' | 'dark';
}

/** A strip with the first rows of a file that is being read beside a capture that stays in sight. */
export function BeginningStrip(props: BeginningStripProps) {
  const { capture, theme } = props;
  const paper = useRef<HTMLDivElement>(null);
  const whole = useMemo(() => ({ startS: 0, endS: Math.max(capture.durationS, 1e-3) }), [capture]);
  const stage = useStage(whole, timeForm(capture.durationS), paper);
  return (
    <section className="overview" style={themeVariables(theme)} aria-label={`Beginning of ${capture.name}`}>
      <div className="overviewPaper" ref={paper}>
        <StripTraces stage={stage} {...props} />
      </div>
      <TimeAxis stage={stage} theme={theme} />
    </section>
  );
}
