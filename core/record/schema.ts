// The vehicle record: the one JSON document that is kept per vehicle. What enters from disk or a bundle passes
// `vehicleRecordSchema` once, at the door; inside the program nobody checks again. FORMAT.md logs its versions.

import { z } from 'zod';
import { REPAIR_IDS } from '../capture/repairs.ts';
import { FINDINGS } from '../findings/finding.ts';
import { WINDOW_KINDS, WINDOW_ORIGINS } from '../windows/window.ts';
import { bank, entriesOf, finite, id, instant, line, sha256, text } from './fields.ts';
import { headerChoiceSchema } from './headerChoice.ts';
import { signedSchema } from './opinionSchema.ts';

/** Version of the newest form. Raise it together with a migration and a line in FORMAT.md. */
export const RECORD_VERSION = 3;

/** A number with the unit it was typed in; nothing is converted before it is shown or computed with. */
export const temperatureSchema = z.strictObject({ value: finite, unit: z.enum(['C', 'F', 'K']) });

export const identitySchema = z.strictObject({
  /** What the shop calls it: "Van 14". Never empty. */
  name: line.min(1),
  description: line,
  modelYear: z.number().int().min(1900).max(2200).nullable(),
  mileage: z.strictObject({ value: finite.nonnegative(), unit: z.enum(['km', 'mi']) }).nullable(),
  vin: line,
  plate: line,
  customer: text,
  complaint: text,
  firstSold: z.iso.date().nullable(),
  /** Whether the vehicle has an oxygen sensor behind the converter; cars before 1996 in the United States may not. */
  rearSensor: z.enum(['yes', 'no', 'unknown']),
  engineLitres: finite.positive().nullable(),
});

/** What the papers of a replacement ask for beyond the vehicle's identity (51 FR 28113, 5 August 1986; check 2.12). */
export const papersSchema = z.strictObject({
  /** Make of the vehicle as its registration gives it. */
  make: line,
  /** Why the part has to be replaced, in the words of the shop. */
  reason: text,
  /** Whether a state or local inspection ordered the replacement. */
  inspectionOrdered: z.enum(['yes', 'no', 'unknown']),
  /** Whether customer and shop have signed a statement of need. */
  statementSigned: z.enum(['yes', 'no', 'unknown']),
  partFitted: line,
  fittedOn: z.iso.date().nullable(),
  /** What is written on the tag of the part that was taken out. */
  oldPartTag: line,
});

export const brickSchema = z.strictObject({
  id,
  bank,
  /** Position along the exhaust of its bank, from 1. */
  position: z.number().int().min(1).max(9),
  place: z.enum(['closeCoupled', 'underfloor', 'unknown']),
  /** Whether the downstream sensor sits behind this brick. */
  beforeRearSensor: z.boolean(),
});

export const troubleCodeSchema = z.strictObject({
  id,
  code: z.string().regex(/^[PCBU][0-3][0-9A-F]{3}$/),
  status: z.enum(['confirmed', 'pending', 'permanent', 'unknown']),
});

/** What is chosen for one capture. Without columns they are recognised, and the choice is about the times alone. */
export const columnChoiceSchema = headerChoiceSchema.extend({
  /** Repairs of the times that a person has undone; left out where there are none. */
  asWritten: z.array(z.enum(REPAIR_IDS)).min(1).exactOptional(),
});

export const captureRefSchema = z.strictObject({
  id,
  kind: z.enum(['before', 'after', 'knownGood', 'other']),
  /** File name without folders. Where the file lies is the shell's affair and never part of the record. */
  name: line,
  bytes: z.number().int().nonnegative(),
  sha256,
  addedAt: instant,
  durationS: finite.nonnegative(),
  rows: z.number().int().nonnegative(),
  columnChoice: columnChoiceSchema.nullable(),
  /** True for the invented drives that come with the program. */
  sample: z.boolean(),
});

export const windowSchema = z
  .strictObject({
    id,
    captureId: id,
    name: line,
    startS: finite,
    endS: finite,
    bank,
    kind: z.enum(WINDOW_KINDS),
    origin: z.enum(WINDOW_ORIGINS),
  })
  .refine((window) => window.startS < window.endS, { path: ['endS'], error: 'a window ends after it starts' });

export const readingSchema = z.strictObject({
  id,
  bank,
  brick: z.number().int().min(1).max(9).nullable(),
  inlet: temperatureSchema,
  outlet: temperatureSchema,
  rpm: finite.nonnegative().nullable(),
  emissivity: finite.min(0.01).max(1).nullable(),
  takenAt: instant,
  /** Capture that was running when it was taken, or null. */
  captureId: id.nullable(),
});

export const noteSchema = z.strictObject({
  id,
  /** Null pins the note to the vehicle as a whole. */
  captureId: id.nullable(),
  /** Moment, or start of a stretch; null with captureId null. */
  startS: finite.nullable(),
  /** End of a stretch; null for a moment. */
  endS: finite.nullable(),
  text,
  author: line,
  writtenAt: instant,
  changedAt: instant.nullable(),
});

/** A finding as it stood when it was made, so that a reader can see whether a newer core says something else. */
export const keptFindingSchema = z.strictObject({
  id,
  /** The window it is about, or null for the vehicle's verdict. */
  windowId: id.nullable(),
  coreVersion: line,
  madeAt: instant,
  finding: z.enum(FINDINGS),
  probabilityNotStoring: finite.min(0).max(1).nullable(),
  sentence: text,
});

export const costsSchema = z.strictObject({
  currency: z.string().max(8),
  converterPrice: finite.nonnegative(),
  labourHour: finite.nonnegative(),
});

/** A reading in which the second reader does not see what the first one came to until they look or sign. */
export const blindReadingSchema = z.strictObject({
  startedAt: instant,
  /** When the reader chose to look, or signed; null while they do not see it. */
  lookedAt: instant.nullable(),
  /** Ids of what the first reader had made when it began. */
  before: z.strictObject({ windows: z.array(id), notes: z.array(id) }),
});

export const vehicleRecordSchema = z.strictObject({
  format: z.literal('tailtrace-vehicle'),
  version: z.literal(RECORD_VERSION),
  id,
  createdAt: instant,
  archived: z.boolean(),
  identity: identitySchema,
  costs: costsSchema,
  papers: papersSchema,
  bricks: entriesOf(brickSchema),
  troubleCodes: entriesOf(troubleCodeSchema),
  captures: entriesOf(captureRefSchema),
  windows: entriesOf(windowSchema),
  readings: entriesOf(readingSchema),
  notes: entriesOf(noteSchema),
  findings: entriesOf(keptFindingSchema),
  /** What readers signed. Signing adds; nothing in it is changed or taken away. */
  opinions: entriesOf(signedSchema),
  /** Null where the record was not received, or was not read blind. No part of what a signer is given. */
  blindReading: blindReadingSchema.nullable(),
});

export type VehicleRecord = z.infer<typeof vehicleRecordSchema>;
export type Identity = z.infer<typeof identitySchema>;
export type Papers = z.infer<typeof papersSchema>;
export type Costs = z.infer<typeof costsSchema>;
export type Brick = z.infer<typeof brickSchema>;
export type TroubleCode = z.infer<typeof troubleCodeSchema>;
export type CaptureRef = z.infer<typeof captureRefSchema>;
export type ColumnChoice = z.infer<typeof columnChoiceSchema>;
export type RecordWindow = z.infer<typeof windowSchema>;
export type Reading = z.infer<typeof readingSchema>;
export type Note = z.infer<typeof noteSchema>;
export type KeptFinding = z.infer<typeof keptFindingSchema>;
export type Temperature = z.infer<typeof temperatureSchema>;
