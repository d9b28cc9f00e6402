// What a question of the window may look like when it arrives at the core's process: one schema for each question of
// coreMessages.ts, used at that one door. Replies are made by our own code and are not checked again.

import { z } from 'zod';
import {
  brickSchema,
  captureRefSchema,
  columnChoiceSchema,
  costsSchema,
  identitySchema,
  readingSchema,
  windowSchema,
} from '../record/schema.ts';
import type { CoreQuestionName, CoreQuestions } from './coreMessages.ts';

const MOST_CHANNELS = 1000;
const MOST_BUCKETS = 100_000;

const key = z.string().max(64);
const channelId = z.string().max(64);
const channelIds = z.array(channelId).max(MOST_CHANNELS);
const seconds = z.number();
const troubleCodes = z.array(z.string().max(16)).max(200);
const { startS, endS, bank, kind, origin } = windowSchema.shape;
const captureWindow = z.strictObject({ startS, endS, bank, kind, origin });
const heldWindow = { key, window: captureWindow };

/** One schema a question. */
export const ASK_SCHEMAS = {
  open: z.strictObject({
    token: z.string().max(128),
    choice: columnChoiceSchema.nullable(),
    alwaysAsk: z.boolean().exactOptional(),
  }),
  openBeginning: z.strictObject({ token: z.string().max(128), choice: columnChoiceSchema.nullable() }),
  close: z.strictObject({ key }),
  views: z.strictObject({
    key,
    channelIds,
    startS: seconds,
    endS: seconds,
    buckets: z.number().int().min(1).max(MOST_BUCKETS),
  }),
  valuesAt: z.strictObject({ key, channelIds, timeS: seconds }),
  nextStop: z.strictObject({
    key,
    channelId,
    fromS: seconds,
    direction: z.union([z.literal(1), z.literal(-1)]),
    stop: z.enum(['sample', 'switch']),
  }),
  describe: z.strictObject({ key, channelIds, startS: seconds, endS: seconds }),
  suggest: z.strictObject({ key }),
  scoreWindow: z.strictObject({ ...heldWindow, troubleCodes }),
  scoreVehicle: z.strictObject({
    captures: z
      .array(
        z.strictObject({
          key,
          captureId: captureRefSchema.shape.id,
          kind: captureRefSchema.shape.kind,
          windows: z.array(windowSchema).max(10_000),
        }),
      )
      .max(1000),
    readings: z.array(readingSchema).max(10_000),
    troubleCodes,
    rearSensor: identitySchema.shape.rearSensor,
    costs: costsSchema.exactOptional(),
    bricks: z.array(brickSchema).max(100).exactOptional(),
  }),
  modelTraces: z.strictObject(heldWindow),
  compare: z.strictObject({ first: z.strictObject(heldWindow), second: z.strictObject(heldWindow) }),
} satisfies { [Name in CoreQuestionName]: z.ZodType<CoreQuestions[Name]['ask']> };

/** A message as it arrives, before its question is looked at. */
export const toCoreSchema = z.union([
  z.strictObject({ type: z.literal('ask'), id: z.number().int(), name: z.string().max(64), ask: z.unknown() }),
  z.strictObject({ type: z.literal('cancel'), id: z.number().int() }),
]);

/** Whether the service knows a question of this name. */
export function isQuestionName(name: string): name is CoreQuestionName {
  return Object.hasOwn(ASK_SCHEMAS, name);
}
