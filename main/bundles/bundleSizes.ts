import { BUNDLE_LIMITS } from '../../core/evidence/bundle/unpackBundle.ts';
import type { Problem } from '../../core/reading/problem.ts';

/** The largest file that can be a bundle: its contents may not become smaller by packing, and the directory comes on top. */
export const LARGEST_BUNDLE_FILE = BUNDLE_LIMITS.bytes + 1024 * 1024;

/** Why so many bytes cannot be packed; null where they can. Said before any work is done. */
export function tooLarge(bytes: number): Problem | null {
  if (bytes <= BUNDLE_LIMITS.bytes) return null;
  return {
    id: 'bundle.tooLarge',
    what: `What was chosen comes to ${megabytes(bytes)} MB, and a bundle holds ${megabytes(BUNDLE_LIMITS.bytes)} MB at most.`,
    where: 'the bundle',
    doNext: 'Leave a capture out, and hand its file over beside the bundle.',
  };
}

/** Powers of ten, as files are sold and sent. */
const megabytes = (bytes: number): number => Math.ceil(bytes / 1e6);
