import { join, parse } from 'node:path';
import { build } from 'esbuild';

/** Builds the script of a thread into a folder, as the program builds it; `entry` is counted from the root. */
export async function buildThread(entry: string, folder: string): Promise<string> {
  const script = join(folder, `${parse(entry).name}.cjs`);
  await build({
    entryPoints: [entry],
    bundle: true,
    platform: 'node',
    format: 'cjs',
    outfile: script,
    logLevel: 'silent',
  });
  return script;
}
