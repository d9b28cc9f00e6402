import type { Capture } from '../capture/capture.ts';
import type { Channel } from '../capture/channel.ts';
import type { Comparison } from '../compare/comparison.ts';
import type { VehicleScore } from '../findings/vehicleScore.ts';
import type { CheckedLink } from '../opinions/chain.ts';
import type { Temperature, VehicleRecord } from '../record/schema.ts';
import type { DecimalSign } from './sheet.ts';

/** What a sheet tells about a capture beyond the record. The summary of an open capture is one of these. */
export type CaptureFacts = Pick<Capture, 'startClock' | 'warnings' | 'layout'> & {
  readonly channels: readonly (Pick<Channel, 'role' | 'bank' | 'name' | 'unit' | 'facts'> & {
    readonly samples: number;
  })[];
};

/** Private fields that a sheet leaves out unless they are asked for (T-PRIV-1). */
export interface Included {
  /** The last six characters of the vehicle number. */
  readonly vin: boolean;
  readonly plate: boolean;
  readonly customer: boolean;
  readonly complaint: boolean;
  /** Names and licences under signed opinions. */
  readonly signers: boolean;
}

export const NOTHING_PRIVATE: Included = {
  vin: false,
  plate: false,
  customer: false,
  complaint: false,
  signers: false,
};

export interface SheetSettings {
  readonly temperatureUnit: Temperature['unit'];
  readonly decimalSign: DecimalSign;
  readonly paper: 'A4' | 'Letter';
  readonly include: Included;
  /** RFC 3339 with offset, of the place where the sheet is made. */
  readonly madeAt: string;
  /** Who makes it; an empty text prints as not recorded. */
  readonly reader: string;
  /** Version of the core that made the score. */
  readonly coreVersion: string;
}

/** A picture for the sheet: an SVG document that stands alone, made by tracePicture or its like. */
export interface SheetPicture {
  /** The capture it belongs under, or null to stand with the result. */
  readonly captureId: string | null;
  readonly caption: string;
  /** What it shows, for those who cannot see it. */
  readonly alternative: string;
  readonly svg: string;
}

/** Two windows over each other. */
export interface SheetComparison {
  /** Names for people: "Hold at 2300 of van-before.csv". */
  readonly first: string;
  readonly second: string;
  readonly comparison: Comparison;
}

export interface SheetInput {
  readonly record: VehicleRecord;
  readonly score: VehicleScore;
  /** By capture id; a capture that is not open has none, and the sheet says what only the record knows of it. */
  readonly captures: Readonly<Record<string, CaptureFacts>>;
  /** Everything that was signed, checked, in the order of its chain. */
  readonly opinions: readonly CheckedLink[];
  readonly pictures: readonly SheetPicture[];
  readonly comparisons: readonly SheetComparison[];
  /** A hash that lets others see whether they hold the same thing, made by the caller; null where there is none. */
  readonly hash: { readonly of: string; readonly sha256: string } | null;
  readonly settings: SheetSettings;
}
