// The JSON that `npm run score -- --json` prints, one object a capture. Other programs rely on it: nothing is renamed or
// taken away without raising `contract`. Additions are allowed and marked as such. The schema is the promise; the object
// is made to fit it in buildCommandReport.ts.

import { z } from 'zod';
import { ROLES } from '../capture/roles.ts';
import { WARNING_IDS } from '../capture/warnings.ts';
import { FINDINGS } from '../findings/finding.ts';
import { WINDOW_KINDS, WINDOW_ORIGINS } from '../windows/window.ts';

export const CONTRACT_VERSION = 1;

// zod's numbers are finite: what has no value is null, never NaN.
const number = z.number();
const bank = z.union([z.literal(1), z.literal(2), z.null()]);
const finding = z.enum(FINDINGS);
const probability = number.min(0).max(1).nullable();
const reason = z.strictObject({ for: finding, weight: number, detail: z.string(), /** Addition. */ id: z.string() });

export const reportedCaptureSchema = z.strictObject({
  /** File name without folders. */
  file: z.string(),
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
  durationS: number.nonnegative(),
  rows: z.number().int().nonnegative(),
  warnings: z.array(
    z.strictObject({
      id: z.enum(WARNING_IDS),
      detail: z.string(),
      row: z.number().int().nullable(),
      /** Additions: rows it concerns, and whether the reader changed something. */
      count: z.number().int(),
      repaired: z.boolean(),
    }),
  ),
  channels: z.array(
    z.strictObject({
      role: z.enum(ROLES),
      bank,
      /** As in the file. */
      name: z.string(),
      unit: z.string(),
      samples: z.number().int().nonnegative(),
      medianRateHz: number.nonnegative(),
      /** Additions. */
      sensor: z.number().int().nullable(),
      fileUnit: z.string().nullable(),
      renewalRateHz: number.nonnegative(),
    }),
  ),
  /** Additions: place of the capture on the command line from 1, size, clock at second 0, how the file was laid out. */
  input: z.number().int().positive(),
  bytes: z.number().int().nonnegative(),
  startClock: z.string().nullable(),
  layout: z.string(),
  headerKey: z.string(),
});

export const reportedWindowSchema = z.strictObject({
  startS: number,
  endS: number,
  bank,
  kind: z.enum(WINDOW_KINDS),
  origin: z.enum(WINDOW_ORIGINS),
  conditions: z.array(z.strictObject({ id: z.string(), met: z.boolean().nullable(), detail: z.string() })),
  measures: z.record(z.string(), number.nullable()),
  uncertainty: z.record(z.string(), z.tuple([number, number])),
  finding,
  probabilityNotStoring: probability,
  reasons: z.array(reason),
  /** Additions: why a measure has no value, and what stands in the way. */
  missing: z.record(z.string(), z.string()),
  blockers: z.array(z.string()),
  blockerIds: z.array(z.string()),
});

const judged = {
  finding,
  probabilityNotStoring: probability,
  /** Sentences that begin with what stands in the way, in the trade's words. */
  blockers: z.array(z.string()),
  nextTest: z.string().nullable(),
  reasons: z.array(reason),
  /** Additions. */
  blockerIds: z.array(z.string()),
  nextTests: z.array(z.strictObject({ id: z.string(), words: z.string(), why: z.string(), minutes: number })),
  sentence: z.string(),
} as const;

export const describeReportSchema = z.strictObject({
  contract: z.literal(CONTRACT_VERSION),
  tool: z.strictObject({ name: z.literal('tailtrace'), version: z.string() }),
  capture: reportedCaptureSchema,
});

const saidOfOne = z.strictObject({ finding, probabilityNotStoring: probability });
/** A finding that came in a bundle, beside the one that was worked out anew; null where there is none of the kind. */
const comparedFinding = {
  kept: saidOfOne.extend({ coreVersion: z.string(), madeAt: z.string() }).nullable(),
  recomputed: saidOfOne.nullable(),
  /** Whether both say the same, to the last bit; null where one of them is missing. */
  agree: z.boolean().nullable(),
} as const;

/** What is told of a capture that came in a bundle for a second reader. */
export const reportedBundleSchema = z.strictObject({
  /** File name without folders. */
  file: z.string(),
  manifestSha256: z.string().regex(/^[0-9a-f]{64}$/),
  madeAt: z.string(),
  /** Version of the core that made the kept findings. */
  coreVersion: z.string(),
  /** Windows that the record has in this capture. */
  windows: z.array(
    z.strictObject({ id: z.string(), name: z.string(), startS: number, endS: number, ...comparedFinding }),
  ),
  /** The vehicle's finding over all captures; recomputed only where the bundle holds all of them. */
  vehicle: z.strictObject({ name: z.string(), ...comparedFinding }),
});

export const commandReportSchema = describeReportSchema.extend({
  windows: z.array(reportedWindowSchema),
  thermal: z.array(
    z.strictObject({
      inletC: number,
      outletC: number,
      riseC: number,
      reading: z.string(),
      /** Additions. */
      riseInterval: z.tuple([number, number]),
      bank,
      brick: z.number().int().nullable(),
    }),
  ),
  verdict: z.strictObject(judged),
  /** Addition: the verdict of each bank that has evidence. */
  banks: z.array(z.strictObject({ bank, ...judged })),
  /** Addition, only of a capture that came in a bundle. */
  bundle: reportedBundleSchema.exactOptional(),
});

export type DescribeReport = z.infer<typeof describeReportSchema>;
export type CommandReport = z.infer<typeof commandReportSchema>;
export type ReportedBundle = z.infer<typeof reportedBundleSchema>;
export type ReportedCapture = z.infer<typeof reportedCaptureSchema>;
export type ReportedWindow = z.infer<typeof reportedWindowSchema>;
