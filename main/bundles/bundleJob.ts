// Work on bundles that takes its time, as data: done in a process of its own, so that the shell goes on answering.

import { type KeepWish, keepCaptures } from './keepCaptures.ts';
import { openBundle } from './openBundle.ts';
import { type PackWish, packBundle } from './packBundle.ts';
import { type PlacedCapture, weighCaptures } from './weighCaptures.ts';

export type BundleJob =
  | { readonly kind: 'weigh'; readonly captures: readonly PlacedCapture[] }
  | { readonly kind: 'pack'; readonly wish: PackWish }
  | { readonly kind: 'open'; readonly path: string; readonly name: string }
  | { readonly kind: 'keep'; readonly wish: KeepWish };

/** Does a job. What it gives is told by the functions of BundleWorker. */
export function doBundleJob(job: BundleJob): Promise<unknown> {
  switch (job.kind) {
    case 'weigh':
      return weighCaptures(job.captures);
    case 'pack':
      return packBundle(job.wish);
    case 'open':
      return toldOfBundle(job);
    case 'keep':
      return keepCaptures(job.wish);
  }
}

/** Everything about a bundle but its captures' bytes and its sheet, which nobody outside that process needs. */
async function toldOfBundle({ path, name }: { readonly path: string; readonly name: string }) {
  const opened = await openBundle(path, name);
  if (!opened.ok) return opened;
  const { captures: _bytes, sheet: _sheet, ...told } = opened.value;
  return { ok: true, value: told };
}
