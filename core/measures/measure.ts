import type { Capture } from '../capture/capture.ts';
import type { Channel } from '../capture/channel.ts';
import type { Bank } from '../capture/roles.ts';
import type { Series } from '../capture/series.ts';
import type { CaptureWindow } from '../windows/window.ts';

/** A number computed over a window. Either value is finite and missing is null, or value is null and missing says why. */
export interface MeasureValue {
  readonly id: string;
  readonly value: number | null;
  /** 95 % interval, low then high, or null where none is given. Contains the value. */
  readonly interval: readonly [number, number] | null;
  /** Why there is no value, as a sentence for the person; null where there is one. */
  readonly missing: string | null;
}

/** Everything a measure may look at. Series are cut to the window once and shared by all measures. */
export interface WindowData {
  readonly capture: Capture;
  readonly window: CaptureWindow;
  readonly bank: Bank;
  /** The upstream sensor of the bank: voltage of a switching sensor, or lambda of a wideband one. */
  readonly upstream: SensorSeries | null;
  readonly downstream: SensorSeries | null;
}

/** A sensor's channel and its samples within the window. */
export interface SensorSeries {
  readonly channel: Channel;
  readonly series: Series;
}

/** What a measure is: one file in core/measures, one line in its index. */
export interface Measure {
  /** Key in the contract's `measures`; unit at the end of the name where it has one: upstreamSwitchHz. */
  readonly id: string;
  /** For tables: "Switching frequency, upstream". */
  readonly words: string;
  /** Unit for display; '1' for a ratio. */
  readonly unit: string;
  /** Digits after the decimal sign in tables. */
  readonly digits: number;
  /** One sentence on what it needs: channels, rate, length. */
  readonly needs: string;
  /** One or two sentences of help: what it tells and where its limits are. */
  readonly help: string;
  /** Pure; never throws for any data; null with a reason where the data cannot support the number. */
  compute(data: WindowData): MeasureValue;
}
