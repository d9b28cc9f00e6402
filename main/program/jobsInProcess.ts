import { utilityProcess } from 'electron';
import type { StartJob } from '../bundles/bundleWorker.ts';

/**
 * Has each job on a bundle done in a process of its own. Not in a thread of the shell: one that does not come to its end
 * keeps the whole program from ending. `script` is the bundle of bundleProcess.ts.
 */
export function jobsInProcess(script: string): StartJob {
  return (job, { told, ended }) => {
    const child = utilityProcess.fork(script, [], { serviceName: 'Tailtrace bundles' });
    child.on('spawn', () => child.postMessage(job));
    child.on('message', told);
    child.on('exit', ended);
    return () => void child.kill();
  };
}
