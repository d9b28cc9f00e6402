import { describe, expect, test } from 'vitest';
import { scoreCapture } from '../../../../core/scoreCapture.ts';
import { peopleLines } from '../../../../main/command/peopleReport.ts';
import { captureOf } from '../../../support/drawTrace.ts';
import { sampleCapture } from '../../../support/sampleCapture.ts';

const VAN = await sampleCapture('van-before.csv');
const reportFor = (troubleCodes: string[]) =>
  peopleLines(
    { capture: VAN, sha256: '0'.repeat(64), input: 1 },
    scoreCapture(VAN, { windows: null, bank: null, thermal: [], troubleCodes }),
  );

describe('the short report', () => {
  test('says once for all windows what nobody recorded, and not under each of them', () => {
    const lines = reportFor([]);
    const never = lines.filter((line) => line.startsWith('  Not recorded in any window: '));
    expect(never).toEqual([expect.stringContaining('No misfire code; No code of the front sensor')]);
    expect(lines.filter((line) => line.includes('No misfire code'))).toEqual(never);
  });

  test('keeps under its window what only that window misses or fails', () => {
    expect(reportFor([])).toContainEqual(expect.stringMatching(/^ {4}Engine speed raised – not met: \d+ 1\/min/));
  });

  test('leaves the line out where everything was recorded', () => {
    const never = reportFor(['P0420']).find((line) => line.startsWith('  Not recorded in any window'));
    expect(never).toBeUndefined();
  });

  test('counts one row and one sample in the singular', () => {
    const capture = captureOf([{ role: 'rpm', rateHz: 1, seconds: 0, values: () => 800 }]);
    const lines = peopleLines(
      { capture, sha256: '0'.repeat(64), input: 1 },
      scoreCapture(capture, { windows: null, bank: null, thermal: [], troubleCodes: [] }),
    ).map((line) => line.replaceAll('\u00a0', ' '));
    expect(lines).toContainEqual(expect.stringContaining(', 1 row, SHA-256'));
    expect(lines).toContainEqual(expect.stringContaining(', 1 sample, '));
  });
});
