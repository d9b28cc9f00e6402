// The thread of BundleWorker: does one job and ends.

import { parentPort, workerData } from 'node:worker_threads';
import { doBundleJob } from './bundleJob.ts';

void doBundleJob(workerData).then((answer) => parentPort?.postMessage(answer));
