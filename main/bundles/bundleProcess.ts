// A process of BundleWorker: a child of the shell that is given one job, answers it, and is ended.

import { doBundleJob } from './bundleJob.ts';

const shell = process.parentPort;

shell.once('message', ({ data }) => {
  void doBundleJob(data).then((answer) => shell.postMessage(answer));
});
