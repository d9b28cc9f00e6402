// What the core must say of the invented drives that come with the program: the story behind each is in
// core/simulation/sampleDrives, and the finding must tell it without being told.

import { describe, expect, test } from 'vitest';
import type { CaptureScore } from '../../../../core/findings/finding.ts';
import { scoreCapture } from '../../../../core/scoreCapture.ts';
import { SAMPLE_DRIVES } from '../../../../core/simulation/sampleDrives/index.ts';
import { suggestWindows } from '../../../../core/windows/suggestWindows.ts';
import { WINDOW_KINDS } from '../../../../core/windows/window.ts';
import { sampleCapture } from '../../../support/sampleCapture.ts';

const CODES = new Map(SAMPLE_DRIVES.map(({ file, troubleCodes }) => [file, troubleCodes]));

async function scoreDrive(file: string): Promise<CaptureScore> {
  const capture = await sampleCapture(file);
  return scoreCapture(capture, { windows: null, bank: null, thermal: [], troubleCodes: CODES.get(file) ?? [] });
}

describe('sample drives', () => {
  test('van-before: the converter does not store, and nothing stands in the way of saying so', async () => {
    const { verdict } = await scoreDrive('van-before.csv');
    expect(verdict.finding).toBe('notStoring');
    expect(verdict.blockers).toEqual([]);
    expect(verdict.probabilityNotStoring).toBeGreaterThan(0.9);
    expect(verdict.sentence).toMatch(/^Converter of bank 1: does not store oxygen \(\d\d %\)\.$/);
  });

  test('van-before: each hold by itself says so too, by the swing behind and by the fitted model', async () => {
    const { windows } = await scoreDrive('van-before.csv');
    const holds = windows.filter(({ kind }) => kind === 'hold');
    expect(holds.length).toBeGreaterThan(1);
    for (const { finding, reasons } of holds) {
      expect(finding).toBe('notStoring');
      expect(reasons.map(({ id, for: speaksFor }) => [id, speaksFor])).toEqual(
        expect.arrayContaining([
          ['fastSwing', 'notStoring'],
          ['deadFits', 'notStoring'],
        ]),
      );
    }
  });

  test.each(['van-after.csv', 'van-twin.csv'])('%s: stores', async (file) => {
    const { verdict } = await scoreDrive(file);
    expect(verdict.finding).toBe('storing');
    expect(verdict.probabilityNotStoring).toBeLessThan(0.1);
  });

  test('car-two-banks: one bank stores, the other does not, and the worse one comes first', async () => {
    const { banks, verdict } = await scoreDrive('car-two-banks.txt');
    expect(banks.map(({ bank, finding }) => [bank, finding])).toEqual([
      [1, 'storing'],
      [2, 'notStoring'],
    ]);
    expect(verdict.sentence).toMatch(/^Converter of bank 2: does not store oxygen/);
    expect(verdict.sentence).toContain('Converter of bank 1: stores oxygen');
  });

  test('van-trap: cannot tell, the lazy front sensor and the leak first', async () => {
    const { verdict } = await scoreDrive('van-trap.tsv');
    expect(verdict.finding).toBe('cannotTell');
    const ids = verdict.blockers.map(({ id }) => id);
    expect(ids).toContain('frontLazy');
    expect(ids).toContain('leak');
    expect(verdict.nextTests.map(({ id }) => id)).toEqual(expect.arrayContaining(['frontSensorCheck', 'leakCheck']));
  });

  test('road-drive: windows of every kind, and a converter that stores', async () => {
    const capture = await sampleCapture('road-drive.csv');
    const kinds = new Set(suggestWindows(capture).map(({ kind }) => kind));
    expect([...kinds].sort()).toEqual(WINDOW_KINDS.filter((kind) => kind !== 'mixed').sort());
    const { verdict } = await scoreDrive('road-drive.csv');
    expect(verdict.finding).toBe('storing');
  });

  test('analogue-hold: a converter in between is neither condemned nor cleared', async () => {
    const { verdict } = await scoreDrive('analogue-hold.csv');
    expect(['weak', 'notStoring', 'cannotTell']).toContain(verdict.finding);
    expect(verdict.probabilityNotStoring).toBeGreaterThan(0.1);
  });

  test('never a condemning finding while a blocker stands, in any window of any drive', async () => {
    for (const { file } of SAMPLE_DRIVES) {
      const { windows, banks } = await scoreDrive(file);
      for (const { finding, blockers } of [...windows, ...banks])
        if (blockers.length > 0) expect(finding).toBe('cannotTell');
    }
  });
});
