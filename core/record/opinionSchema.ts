// What readers have signed: opinions, and withdrawals of them. Both are links of one chain; neither is ever changed.

import { z } from 'zod';
import { FINDINGS } from '../findings/finding.ts';
import { WINDOW_KINDS } from '../windows/window.ts';
import { bank, finite, id, instant, line, sha256, text } from './fields.ts';

/**
 * Why one reader comes to another finding than the one answered. The list follows the reasons that were counted when
 * scorers of sleep recordings disagreed (doi 10.1007/s11325-019-01801-x), in the words of this job.
 */
export const DISAGREEMENTS = [
  'onThreshold',
  'otherWindow',
  'conditionReadOtherwise',
  'captureQuality',
  'missedFeature',
  'outsideKnowledge',
] as const;
export type Disagreement = (typeof DISAGREEMENTS)[number];

/** What the core said of one bank in a window when an opinion was signed. */
export const coreSaidSchema = z.strictObject({
  bank,
  coreVersion: line,
  finding: z.enum(FINDINGS),
  probabilityNotStoring: finite.min(0).max(1).nullable(),
  /** Conditions by their id: met, not met, or not recorded. Empty where only the finding was kept. */
  conditions: z.record(id, z.boolean().nullable()),
  /** Measures by their id, in the unit of the measure; null where the capture could not support one. */
  measures: z.record(id, finite.nullable()),
});

/** A window that an opinion rests on, as it stood; the capture is named by its content, so that others can find it. */
export const restingWindowSchema = z.strictObject({
  captureSha256: sha256,
  startS: finite,
  endS: finite,
  bank,
  kind: z.enum(WINDOW_KINDS),
  /** One for each bank that was judged; empty where the window was not scored. */
  coreSaid: z.array(coreSaidSchema).max(2),
});

const link = {
  id,
  author: z.strictObject({ name: line.min(1), licence: line }),
  signedAt: instant,
  /** Version of the program it was signed with. */
  coreVersion: line,
  /** SHA-256 of the canonical JSON of what the signer was given of the record, see core/opinions/chain.ts. */
  given: sha256,
  /** SHA-256 of the canonical JSON of the link that was signed before it; null for the first. */
  previous: sha256.nullable(),
};

export const opinionSchema = z.strictObject({
  ...link,
  kind: z.literal('opinion'),
  finding: z.enum(FINDINGS),
  /** How sure the reader is of the finding, whole per cent. Nobody is surer than 99. */
  confidence: z.number().int().min(1).max(99),
  reasons: text,
  /** The test that would settle it, in words; empty where none was named. */
  nextTest: text,
  /** The opinion it answers. */
  answers: id.nullable(),
  disagreement: z.enum(DISAGREEMENTS).nullable(),
  windows: z.array(restingWindowSchema).max(1000),
  /** When the blind reading it came from began, and when its reader looked: null before signing. Left out where there was none. */
  reading: z.strictObject({ startedAt: instant, lookedAt: instant.nullable() }).exactOptional(),
});

/** Takes an opinion back without taking it away: it stays to be read, marked as withdrawn. */
export const withdrawalSchema = z.strictObject({
  ...link,
  kind: z.literal('withdrawal'),
  withdraws: id,
  reason: text,
});

export const signedSchema = z.discriminatedUnion('kind', [opinionSchema, withdrawalSchema]);

export type CoreSaid = z.infer<typeof coreSaidSchema>;
export type RestingWindow = z.infer<typeof restingWindowSchema>;
export type Opinion = z.infer<typeof opinionSchema>;
export type Withdrawal = z.infer<typeof withdrawalSchema>;
/** A link of the chain. */
export type Signed = z.infer<typeof signedSchema>;
