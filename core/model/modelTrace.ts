import type { TraceView } from '../capture/traceView.ts';

/** A trace of the model, to be drawn over the recorded rear sensor so that a person sees why. */
export interface ModelTrace {
  /** 'fitted': as this converter was fitted; 'good' and 'dead': behind a good one and one that stores nothing. */
  readonly id: 'fitted' | 'good' | 'dead';
  /** Beside the trace: "good converter". */
  readonly words: string;
  /** The rear sensor it is drawn over. */
  readonly overChannelId: string;
  readonly view: TraceView;
}
