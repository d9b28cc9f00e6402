// Numbers for "no value". Which ones a file uses nobody can look up; common practice, no source.

import { describe, expect, it } from 'vitest';
import { readText } from '../../../support/readText.ts';

const drive = (cells: (i: number) => string, count = 200) =>
  `Time (s),RPM,O2S12 (V)\n${Array.from({ length: count }, (_, i) => `${(i / 10).toFixed(1)},${cells(i)}\n`).join('')}`;
const blanks = (values: ArrayLike<number> | undefined) => Array.from(values ?? []).filter(Number.isNaN).length;

describe('numbers that stand for no value', () => {
  it.each([-999, -9999, 9999, 65535, -32768, 2147483647])(
    '%d far from all others is left blank and told of',
    async (error) => {
      const { capture } = await readText(drive((i) => `${2200 + (i % 9)},${i % 20 === 7 ? error : `0.6${i % 10}`}`));
      const rear = capture.channels.find(({ role }) => role === 'downstreamO2');
      expect(rear?.facts).toMatchObject({ finite: 190, min: 0.6, max: 0.69 });
      expect(blanks(rear?.values)).toBe(10);
      const told = capture.warnings.filter(({ id }) => id === 'unreadableCells');
      expect(told).toMatchObject([{ count: 10, repaired: false }]);
      expect(told[0]?.detail).toContain(String(error));
    },
  );

  it('a channel whose own values reach so far keeps them', async () => {
    const { capture } = await readText(drive((i) => `${i === 50 ? 9999 : 800 + i * 40},0.6${i % 10}`));
    expect(blanks(capture.channels[0]?.values)).toBe(0);
    const counter = await readText(
      `Time (s),Count,RPM\n${Array.from({ length: 200 }, (_, i) => `${i / 10},${65_336 + i},${800 + i}\n`).join('')}`,
    );
    expect(counter.capture.channels[0]?.facts.max).toBe(65_535);
  });

  it('two of them in one channel both go', async () => {
    const { capture } = await readText(
      drive((i) => `${i % 50 === 3 ? -999 : i % 50 === 4 ? 65535 : 2200 + (i % 9)},0.6`),
    );
    expect(capture.channels[0]).toMatchObject({ role: 'rpm', facts: { finite: 192, min: 2200, max: 2208 } });
  });

  it('another number as far away is a value, and the channel is questioned', async () => {
    const { capture } = await readText(drive((i) => `2200,${i % 20 === 7 ? 5000 : `0.6${i % 10}`}`));
    expect(capture.warnings.some(({ id }) => id === 'roleQuestioned')).toBe(true);
  });
});
