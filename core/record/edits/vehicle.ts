// Edits of what belongs to the vehicle as a whole.

import type { Costs, Identity, Papers } from '../schema.ts';
import type { Edit } from './edit.ts';

/** Gives the vehicle another name. An empty name is a mistake of the caller and throws. */
export function renameVehicle(name: string): Edit {
  if (name.trim() === '') throw new RangeError('a vehicle needs a name');
  return {
    name: 'rename vehicle',
    apply: (record) => ({ ...record, identity: { ...record.identity, name } }),
  };
}

/** Changes some of the vehicle's details; those that are not given stay. */
export function setIdentity(changed: Partial<Identity>): Edit {
  if (changed.name !== undefined && changed.name.trim() === '') throw new RangeError('a vehicle needs a name');
  return {
    name: 'change vehicle details',
    apply: (record) => ({ ...record, identity: { ...record.identity, ...changed } }),
  };
}

/** Puts the vehicle away, or takes it back. */
export function setArchived(archived: boolean): Edit {
  return {
    name: archived ? 'archive vehicle' : 'take vehicle out of the archive',
    apply: (record) => ({ ...record, archived }),
  };
}

/** Changes what a wrong decision costs. */
export function setCosts(changed: Partial<Costs>): Edit {
  return {
    name: 'change costs',
    apply: (record) => ({ ...record, costs: { ...record.costs, ...changed } }),
  };
}

/** Changes some of the papers of a replacement. */
export function setPapers(changed: Partial<Papers>): Edit {
  return {
    name: 'change papers',
    apply: (record) => ({ ...record, papers: { ...record.papers, ...changed } }),
  };
}
