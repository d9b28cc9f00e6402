import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const CHILDREN = fileURLToPath(new URL('./children/', import.meta.url));

/** Makes one of the children a file that plain Node can run, with the program's own store inside. Returns its path. */
export async function bundleChild(name: 'saveOnce' | 'saveLoop', folder: string): Promise<string> {
  const outfile = join(folder, `${name}.mjs`);
  await build({
    entryPoints: [join(CHILDREN, `${name}.ts`)],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node18',
    logLevel: 'silent',
  });
  return outfile;
}
