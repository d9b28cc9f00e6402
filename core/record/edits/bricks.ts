// Edits of how the exhaust is laid out.

import type { Brick } from '../schema.ts';
import type { Edit } from './edit.ts';
import { withChanged, withEntry, without } from './entries.ts';

/** Adds a converter brick. */
export function addBrick(brick: Brick): Edit {
  return { name: 'add converter', apply: (record) => ({ ...record, bricks: withEntry(record.bricks, brick) }) };
}

/** Changes some of a brick; what is not given stays. */
export function changeBrick(id: string, changed: Partial<Omit<Brick, 'id'>>): Edit {
  return {
    name: 'change converter',
    apply: (record) => ({ ...record, bricks: withChanged(record.bricks, id, (one) => ({ ...one, ...changed })) }),
  };
}

/** Removes a brick. */
export function removeBrick(id: string): Edit {
  return {
    name: 'delete converter',
    apply: (record) => ({ ...record, bricks: without(record.bricks, (brick) => brick.id === id) }),
  };
}
