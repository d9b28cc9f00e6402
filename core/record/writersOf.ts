import type { VehicleRecord } from './schema.ts';

/**
 * Names under what was written and signed in a record, each once, in the order of the alphabet. Names that were left empty are
 * left out.
 */
export function writersOf({ notes, opinions }: Pick<VehicleRecord, 'notes' | 'opinions'>): string[] {
  const names = [
    ...Object.values(notes).map(({ author }) => author),
    ...Object.values(opinions).map(({ author }) => author.name),
  ];
  return [...new Set(names.map((name) => name.trim()).filter((name) => name !== ''))].sort();
}
