import { z } from 'zod';

const line = z.string().max(500);

/** What a person chose about the columns of all files with one header. */
export const headerChoiceSchema = z.strictObject({
  headerKey: line,
  /** Index of the column to use as time, or null to keep what was found. */
  timeColumn: z.number().int().nonnegative().nullable(),
  /** Samples a second where the file has no time column. */
  rateHz: z.number().positive().nullable(),
  columns: z.array(
    z.strictObject({
      index: z.number().int().nonnegative(),
      role: line,
      bank: z.union([z.literal(1), z.literal(2), z.null()]),
      sensor: z.number().int().min(1).max(8).nullable(),
      unit: line.nullable(),
    }),
  ),
});

export type HeaderChoice = z.infer<typeof headerChoiceSchema>;
