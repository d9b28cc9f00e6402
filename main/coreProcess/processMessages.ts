// What the shell and the core's process say to each other, besides handing over ports.

import { z } from 'zod';

/** Core's process to shell. */
export const toShellSchema = z.union([
  /** Started, and ready for ports. */
  z.strictObject({ type: z.literal('ready') }),
  /** Which file is behind this token? */
  z.strictObject({ type: z.literal('whichFile'), id: z.number().int(), token: z.string().max(128) }),
]);
export type ToShell = z.infer<typeof toShellSchema>;

/** Shell to core's process. A port comes with 'window'; a path is told only for a token that the shell itself gave out. */
export const toProcessSchema = z.union([
  z.strictObject({ type: z.literal('window') }),
  z.strictObject({
    type: z.literal('file'),
    id: z.number().int(),
    file: z.strictObject({ path: z.string(), name: z.string() }).nullable(),
  }),
]);
export type ToProcess = z.infer<typeof toProcessSchema>;
