// The thread in which bundles are packed and checked, built for a test as the program builds it.

import { join } from 'node:path';
import { build } from 'esbuild';
import { BundleWorker } from '../../main/bundles/bundleWorker.ts';

/** A worker on the real thread, whose script is put into this folder. */
export async function bundleWorkerIn(folder: string): Promise<BundleWorker> {
  const script = join(folder, 'bundleThread.cjs');
  await build({
    entryPoints: ['main/bundles/bundleThread.ts'],
    bundle: true,
    platform: 'node',
    format: 'cjs',
    outfile: script,
    logLevel: 'silent',
  });
  return new BundleWorker(script);
}
