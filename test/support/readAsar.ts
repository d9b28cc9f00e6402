// The list of files in an asar archive, read from its head: two nested lengths, then JSON.

import { closeSync, openSync, readSync } from 'node:fs';

const HEAD_BYTES = 16;
const LENGTH_AT = 12;

/** Paths of the files in the archive, from its root, with whether each lies beside it as a plain file. */
export function filesOfAsar(place: string): Map<string, { readonly unpacked: boolean }> {
  const handle = openSync(place, 'r');
  try {
    const head = Buffer.alloc(HEAD_BYTES);
    readSync(handle, head, 0, HEAD_BYTES, 0);
    const json = Buffer.alloc(head.readUInt32LE(LENGTH_AT));
    readSync(handle, json, 0, json.length, HEAD_BYTES);
    const found = new Map<string, { readonly unpacked: boolean }>();
    collect(JSON.parse(json.toString('utf8')), '', found);
    return found;
  } finally {
    closeSync(handle);
  }
}

function collect(entry: unknown, path: string, found: Map<string, { readonly unpacked: boolean }>): void {
  if (typeof entry !== 'object' || entry === null) return;
  if (!('files' in entry)) {
    found.set(path, { unpacked: 'unpacked' in entry && entry.unpacked === true });
    return;
  }
  for (const [name, child] of Object.entries(entry.files ?? {}))
    collect(child, path === '' ? name : `${path}/${name}`, found);
}
