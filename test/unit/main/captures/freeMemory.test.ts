import { expect, test } from 'vitest';
import { availableBytes, captureMemory } from '../../../../main/captures/freeMemory.ts';

// The lines of proc_meminfo(5): MemAvailable is "an estimate of how much memory is available for starting new
// applications", in kB, and counts what of the file cache can be given back.
const MEMINFO =
  'MemTotal:       24567890 kB\nMemFree:          512000 kB\nMemAvailable:   20480000 kB\nBuffers: 1 kB\n';

test('on Linux it is what the kernel calls available, not what lies idle', () => {
  expect(availableBytes(MEMINFO, 512_000 * 1024)).toBe(20_480_000 * 1024);
});

test('elsewhere it is what the system calls free', () => {
  expect(availableBytes('', 7e9)).toBe(7e9);
  expect(availableBytes('MemAvailable: many\n', 7e9)).toBe(7e9);
});

test('a capture may take a good part of this machine, and not all of it', async () => {
  const bytes = await captureMemory();
  expect(bytes).toBeGreaterThan(1e6);
  expect(Number.isInteger(bytes)).toBe(true);
});
