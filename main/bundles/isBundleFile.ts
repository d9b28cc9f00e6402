import { BUNDLE_TAIL_BYTES, looksLikeBundle } from '../../core/evidence/bundle/looksLikeBundle.ts';
import { openRegularFile } from '../captures/openRegularFile.ts';

const ZIP = Buffer.from([0x50, 0x4b, 3, 4]);

/** Whether the file at `path` is meant to be a bundle. What cannot be read is none: opening it as a capture says why. */
export async function isBundleFile(path: string, name: string): Promise<boolean> {
  const opened = await openRegularFile(path, name);
  if (!opened.ok) return false;
  const { handle, bytes } = opened.value;
  try {
    const head = Buffer.alloc(4);
    await handle.read(head, 0, head.length, 0);
    // Few files are archives: the end of the others is left unread.
    if (!head.equals(ZIP)) return looksLikeBundle(name, head);
    const tail = Buffer.alloc(Math.min(bytes, BUNDLE_TAIL_BYTES));
    const { bytesRead } = await handle.read(tail, 0, tail.length, bytes - tail.length);
    return looksLikeBundle(name, tail.subarray(0, bytesRead));
  } catch {
    return false;
  } finally {
    await handle.close();
  }
}
