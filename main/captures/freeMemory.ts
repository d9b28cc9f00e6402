import { readFile } from 'node:fs/promises';
import { freemem } from 'node:os';

/** Of the memory that is free, the values of one capture may take this share: the rest is for pictures and other programs. */
const SHARE = 0.5;

/** Bytes that the values of one capture may take on this machine now. */
export async function captureMemory(): Promise<number> {
  return Math.floor(SHARE * availableBytes(await readFile('/proc/meminfo', 'utf8').catch(() => ''), freemem()));
}

/**
 * Bytes that programs may still take. Linux counts its file cache as used, and says in MemAvailable what it would give
 * back; older runtimes leave that out of their own figure, which is taken where `meminfo` does not have the line.
 */
export function availableBytes(meminfo: string, free: number): number {
  const kilobytes = /^MemAvailable:\s+(\d+) kB$/m.exec(meminfo)?.[1];
  return kilobytes === undefined ? free : Number(kilobytes) * 1024;
}
