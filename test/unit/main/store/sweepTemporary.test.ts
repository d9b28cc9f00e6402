import { mkdtempSync, readdirSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { systemFiles } from '../../../../main/store/fileLayer.ts';
import { sweepTemporary } from '../../../../main/store/sweepTemporary.ts';

const NOW = Date.parse('2026-03-02T12:00:00Z');
const TWO_HOURS = 2 * 60 * 60;

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'tailtrace-sweep-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function put(name: string, ageS: number): void {
  writeFileSync(join(folder, name), name);
  utimesSync(join(folder, name), NOW / 1000 - ageS, NOW / 1000 - ageS);
}

const ours = (i: number) => `.tailtrace-${i.toString(16).padStart(16, '0')}.new`;

/** Names that look like ours and are somebody else's. */
const FOREIGN = [
  (i: number) => `.tailtrace-${i}.new`,
  (i: number) => `tailtrace-${i.toString(16).padStart(16, '0')}.new`,
  (i: number) => `.tailtrace-${i.toString(16).padStart(16, '0')}.new.bak`,
  (i: number) => `.tailtrace-${i.toString().padStart(15, 'G')}x.new`,
  (i: number) => `record-${i}.json`,
];

describe('T-SAVE-8: what a killed program left behind', () => {
  it('of 100 old names the 50 that are ours go, and no other', async () => {
    for (let i = 0; i < 50; i++) {
      put(ours(i), TWO_HOURS);
      put(FOREIGN[i % FOREIGN.length]?.(i) ?? '', TWO_HOURS);
    }
    expect(readdirSync(folder)).toHaveLength(100);
    expect(await sweepTemporary(systemFiles, folder, NOW)).toBe(50);
    const left = readdirSync(folder);
    expect(left).toHaveLength(50);
    expect(left).not.toContain(ours(0));
  });

  it('a save that may still be under way is left alone', async () => {
    put(ours(1), 59 * 60);
    expect(await sweepTemporary(systemFiles, folder, NOW)).toBe(0);
    expect(readdirSync(folder)).toEqual([ours(1)]);
  });

  it('a folder that is not there is no fault', async () => {
    expect(await sweepTemporary(systemFiles, join(folder, 'gone'), NOW)).toBe(0);
  });
});
