// The drives that come with the program open without a question, with both sensors of every bank in their places.

import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { banksOf, findChannel } from '../../../../core/capture/capture.ts';
import { readCapture } from '../../../../core/reading/readCapture.ts';
import { bytesSource } from '../../../support/bytesSource.ts';

const FOLDER = new URL('../../../../assets/drives/', import.meta.url);
const DRIVES = readdirSync(FOLDER).filter((file) => /\.(csv|tsv|txt|log)$/.test(file));

describe('the sample drives', () => {
  it.each(DRIVES)('%s', async (file) => {
    const bytes = new Uint8Array(readFileSync(new URL(file, FOLDER)));
    const outcome = await readCapture(bytesSource(file, bytes), { choice: null });
    if (!outcome.ok) throw new Error(outcome.problem.what);
    const { capture, question } = outcome.value;
    expect(question).toBeNull();
    expect(banksOf(capture).length).toBeGreaterThan(0);
    for (const bank of banksOf(capture)) {
      const front = findChannel(capture, 'upstreamO2', bank) ?? findChannel(capture, 'upstreamLambda', bank);
      expect(front?.facts.finite).toBeGreaterThan(100);
      expect(findChannel(capture, 'downstreamO2', bank, 2)?.unit).toBe('V');
    }
    const repaired = capture.warnings.filter((warning) => warning.repaired);
    expect(repaired).toEqual([]);
  });
});
