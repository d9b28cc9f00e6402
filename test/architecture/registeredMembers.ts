// Every registry of core and of the window, and every member of one, found by looking: a registry is an exported list in
// the index.ts of a folder, its members are exported by the files beside it.

import { join, posix } from 'node:path';
import { ROOT, sourceFiles } from './sourceTree.ts';

export interface Registry {
  readonly folder: string;
  readonly name: string;
  readonly members: readonly Readonly<Record<string, unknown>>[];
}

export interface Member {
  readonly folder: string;
  readonly file: string;
  /** Name of the exported constant. */
  readonly name: string;
  readonly id: string;
  readonly value: Readonly<Record<string, unknown>>;
}

const FILES = sourceFiles().filter((path) => /^(core|renderer)\/.*\.ts$/.test(path) && !path.endsWith('.d.ts'));

/** Modules that could not be loaded, with the reason: what lies in them is not known. */
export const NOT_LOADED: string[] = [];

/** Loads a module as the program would, and gives what it exports. */
async function exportsOf(path: string): Promise<[string, unknown][]> {
  try {
    const loaded: unknown = await import(/* @vite-ignore */ join(ROOT, path));
    return isRecord(loaded) ? Object.entries(loaded) : [];
  } catch (error) {
    NOT_LOADED.push(`${path}: ${error instanceof Error ? error.message : String(error)}`);
    return [];
  }
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The field that tells members apart. */
const KEYS = ['id', 'name', 'kind', 'to'];

export function idOf(value: Readonly<Record<string, unknown>>): string | null {
  const key = KEYS.find((candidate) => ['string', 'number'].includes(typeof value[candidate]));
  return key === undefined ? null : String(value[key]);
}

async function registriesIn(path: string): Promise<Registry[]> {
  return (await exportsOf(path)).flatMap(([name, value]) => {
    if (!Array.isArray(value) || !value.every(isRecord) || name !== name.toUpperCase()) return [];
    return [{ folder: posix.dirname(path), name, members: value }];
  });
}

export const REGISTRIES: readonly Registry[] = (
  await Promise.all(FILES.filter((path) => /^\w+\/.*\/index\.ts$/.test(path)).map(registriesIn))
).flat();

/** Everything exported beside an index that looks like a member: it has every field that all members have. */
async function candidates(registry: Registry): Promise<Member[]> {
  const [first, ...rest] = registry.members;
  if (first === undefined) return [];
  const common = Object.keys(first).filter((key) => rest.every((member) => key in member));
  const found: Member[] = [];
  for (const file of FILES) {
    if (!file.startsWith(`${registry.folder}/`) || file.endsWith('/index.ts')) continue;
    for (const [name, value] of await exportsOf(file)) {
      if (!isRecord(value) || !common.every((key) => key in value)) continue;
      found.push({ folder: registry.folder, file, name, id: idOf(value) ?? name, value });
    }
  }
  return found;
}

export const CANDIDATES: readonly (Member & { readonly registry: Registry })[] = (
  await Promise.all(
    REGISTRIES.map(async (registry) => (await candidates(registry)).map((member) => ({ ...member, registry }))),
  )
).flat();

export const MEMBERS: readonly Member[] = CANDIDATES.filter(({ registry, value }) => registry.members.includes(value));
