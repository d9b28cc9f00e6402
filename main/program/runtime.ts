import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';

/** The major version of Electron that is shipped; package.json pins it exactly. Anything older is a stand-in. */
export const SHIPPED_ELECTRON = 45;

export interface Runtime {
  /** "Electron 45.4.1, Chromium 142.0, Node 24.1" */
  readonly words: string;
  /** True for the old runtime that serves for development and tests on closed networks, and is never shipped. */
  readonly fallback: boolean;
}

export function runtimeOf(versions: {
  readonly electron?: string;
  readonly chrome?: string;
  readonly node: string;
}): Runtime {
  const { electron = '0', chrome = '0', node } = versions;
  return {
    words: `Electron ${electron}, Chromium ${chrome}, Node ${node}`,
    fallback: Number(electron.split('.')[0]) < SHIPPED_ELECTRON,
  };
}

const licencesSchema = z.array(z.strictObject({ name: z.string(), version: z.string(), licence: z.string() }));
export type Licences = z.infer<typeof licencesSchema>;

/** The packages inside the program with their licences, as the build listed them; none where it left no list. */
export async function readLicences(bundleFolder: string): Promise<Licences> {
  try {
    return licencesSchema.parse(JSON.parse(await readFile(join(bundleFolder, 'licences.json'), 'utf8')));
  } catch {
    return [];
  }
}
