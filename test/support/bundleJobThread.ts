// Does one job on a bundle in a thread, in the place of the program's process for it.

import { parentPort, workerData } from 'node:worker_threads';
import { doBundleJob } from '../../main/bundles/bundleJob.ts';

void doBundleJob(workerData).then((answer) => parentPort?.postMessage(answer));
