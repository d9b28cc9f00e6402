// What the window and the core's own process say to each other, over one message port. The window asks, the service
// answers; while a capture is read it also reports progress. Captures stay in the service; only summaries, views and
// scores travel. Data only: no functions, no classes.

import type { Capture } from '../capture/capture.ts';
import type { Channel } from '../capture/channel.ts';
import type { CursorValue, TraceView } from '../capture/traceView.ts';
import type { Comparison } from '../compare/comparison.ts';
import type { WindowScore } from '../findings/finding.ts';
import type { VehicleEvidence } from '../findings/vehicleEvidence.ts';
import type { VehicleScore } from '../findings/vehicleScore.ts';
import type { ModelTrace } from '../model/modelTrace.ts';
import type { Problem } from '../reading/problem.ts';
import type { ColumnQuestion, ReadProgress } from '../reading/readCapture.ts';
import type { ColumnChoice } from '../record/schema.ts';
import type { CaptureWindow } from '../windows/window.ts';

/** A channel without its samples. */
export type ChannelSummary = Omit<Channel, 'values' | 'time'> & { readonly samples: number };

/** A capture without its samples, and the key under which the service holds it. */
export interface CaptureOutline extends Omit<Capture, 'channels'> {
  readonly key: string;
  readonly channels: readonly ChannelSummary[];
}

/** The outline of a capture that was read whole. */
export interface CaptureSummary extends CaptureOutline {
  /** Of the bytes of its file. */
  readonly sha256: string;
}

/** A window of a capture the service holds. */
export interface HeldWindow {
  readonly key: string;
  readonly window: CaptureWindow;
}

/** What a whole vehicle is scored from, with the keys of held captures in the place of the captures. */
export interface VehicleQuestion extends Omit<VehicleEvidence, 'captures'> {
  readonly captures: readonly (Omit<VehicleEvidence['captures'][number], 'capture'> & { readonly key: string })[];
}

/** Every request with its reply. */
export interface CoreQuestions {
  /** `token` is the shell's for a picked file. `alwaysAsk` gives the question even where all columns are certain. */
  open: {
    ask: { readonly token: string; readonly choice: ColumnChoice | null; readonly alwaysAsk?: boolean };
    reply: { readonly summary: CaptureSummary; readonly question: ColumnQuestion | null };
  };
  /** The first rows of a long capture, to look at while `open` reads the whole; held and closed like any other. */
  openBeginning: {
    ask: { readonly token: string; readonly choice: ColumnChoice | null };
    reply: CaptureOutline;
  };
  close: { ask: { readonly key: string }; reply: null };
  /** One view per channel, in the order asked; `buckets` is the width of the pane in device pixels. */
  views: {
    ask: {
      readonly key: string;
      readonly channelIds: readonly string[];
      readonly startS: number;
      readonly endS: number;
      readonly buckets: number;
    };
    reply: readonly TraceView[];
  };
  valuesAt: {
    ask: { readonly key: string; readonly channelIds: readonly string[]; readonly timeS: number };
    reply: readonly CursorValue[];
  };
  /**
   * The next place worth a stop from `fromS`, or null: 'sample' the next sample of the channel, 'switch' its next
   * crossing of the switch point (oxygen sensors only).
   */
  nextStop: {
    ask: {
      readonly key: string;
      readonly channelId: string;
      readonly fromS: number;
      readonly direction: 1 | -1;
      readonly stop: 'sample' | 'switch';
    };
    reply: number | null;
  };
  /** A long description of each channel over a stretch, for those who cannot see the trace. */
  describe: {
    ask: {
      readonly key: string;
      readonly channelIds: readonly string[];
      readonly startS: number;
      readonly endS: number;
    };
    reply: readonly string[];
  };
  suggest: { ask: { readonly key: string }; reply: readonly CaptureWindow[] };
  scoreWindow: {
    ask: HeldWindow & { readonly troubleCodes: readonly string[] };
    reply: WindowScore;
  };
  scoreVehicle: { ask: VehicleQuestion; reply: VehicleScore };
  /** Traces of the model over the rear sensors of a window; empty where none can be followed. */
  modelTraces: { ask: HeldWindow; reply: readonly ModelTrace[] };
  compare: { ask: { readonly first: HeldWindow; readonly second: HeldWindow }; reply: Comparison };
}

export type CoreQuestionName = keyof CoreQuestions;

/** Window to service. */
export type ToCore =
  | {
      [Name in CoreQuestionName]: {
        readonly type: 'ask';
        readonly id: number;
        readonly name: Name;
        readonly ask: CoreQuestions[Name]['ask'];
      };
    }[CoreQuestionName]
  | { readonly type: 'cancel'; readonly id: number };

/** Service to window. */
export type FromCore =
  | { readonly type: 'reply'; readonly id: number; readonly reply: unknown }
  | { readonly type: 'refused'; readonly id: number; readonly problem: Problem }
  | { readonly type: 'progress'; readonly id: number; readonly progress: ReadProgress };
