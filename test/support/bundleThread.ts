import { Worker } from 'node:worker_threads';
import { BundleWorker } from '../../main/bundles/bundleWorker.ts';
import { buildThread } from './buildThread.ts';

/** A worker whose jobs are done apart, in threads, whose script is put into this folder. */
export async function bundleWorkerIn(folder: string): Promise<BundleWorker> {
  const script = await buildThread('test/support/bundleJobThread.ts', folder);
  return new BundleWorker((job, { told, ended }) => {
    const thread = new Worker(script, { workerData: job });
    thread.on('message', told);
    thread.on('error', ended);
    thread.on('exit', ended);
    return () => void thread.terminate();
  });
}
