import { BundleWorker } from '../../main/bundles/bundleWorker.ts';
import { buildThread } from './buildThread.ts';

/** A worker on the real thread in which bundles are packed and checked, whose script is put into this folder. */
export async function bundleWorkerIn(folder: string): Promise<BundleWorker> {
  return new BundleWorker(await buildThread('main/bundles/bundleThread.ts', folder));
}
