// Kinds of fields that several parts of the record are made of.

import { z } from 'zod';

export const id = z.string().min(1).max(64);
export const text = z.string().max(20_000);
export const line = z.string().max(500);
/** RFC 3339 with offset. */
export const instant = z.iso.datetime({ offset: true });
export const bank = z.union([z.literal(1), z.literal(2), z.null()]);
export const finite = z.number();
/** 64 hexadecimal digits, small letters. */
export const sha256 = z.string().regex(/^[0-9a-f]{64}$/);

/** A map of entries by their id. An entry that lies under another key than its own id is refused. */
export function entriesOf<T extends z.ZodType<{ id: string }>>(entry: T) {
  return z.record(id, entry).superRefine((map, context) => {
    for (const [key, { id: own }] of Object.entries(map)) {
      if (key !== own) context.addIssue({ code: 'custom', path: [key, 'id'], message: `lies under the key ${key}` });
    }
  });
}
