import { readFileSync, statSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { DRIVE_TEXTS } from '../../../../core/simulation/sampleDrives/generate.ts';
import { SAMPLE_DRIVES } from '../../../../core/simulation/sampleDrives/index.ts';

const folder = new URL('../../../../assets/drives/', import.meta.url);

describe('the sample drives', () => {
  it.each([...DRIVE_TEXTS])('%s is what the simulation makes, byte for byte', (file, text) => {
    const kept = readFileSync(new URL(file, folder));
    expect(Buffer.compare(kept, Buffer.from(text(), 'utf8'))).toBe(0);
  });

  it('are offered one by one, with words that call them invented', () => {
    expect(SAMPLE_DRIVES.map(({ file }) => file).sort()).toEqual([...DRIVE_TEXTS.keys()].sort());
    for (const { words } of SAMPLE_DRIVES) expect(words).toMatch(/^Invented: /);
  });

  it('take at most 6 MB together', () => {
    const bytes = [...DRIVE_TEXTS.keys()].reduce((sum, file) => sum + statSync(new URL(file, folder)).size, 0);
    expect(bytes).toBeLessThanOrEqual(6e6);
  });

  it('keep oxygen voltages in the steps of a data list, 5 mV (SAE J1979 PID 14, check 1.13)', () => {
    const rows = readFileSync(new URL('van-before.csv', folder), 'utf8').trim().split('\n').slice(2);
    for (const row of rows) {
      for (const cell of row.split(',').slice(2, 4)) expect(Math.round(Number(cell) * 1000) % 5).toBe(0);
    }
  });
});
