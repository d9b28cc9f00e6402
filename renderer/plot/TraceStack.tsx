import type { TraceStackProps } from './traceStackProps.ts';

/** The stack of trace panes: the page. */
export function TraceStack(props: TraceStackProps) {
  return <section className="traceStack" aria-label={`Traces of ${props.capture.name}`} />;
}
