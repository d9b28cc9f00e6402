// One contract for every condition.

import { describe, expect, test } from 'vitest';
import { CONDITIONS } from '../../../../core/conditions/index.ts';
import { blockerRule } from '../../../../core/findings/blockerRules.ts';
import { testRule } from '../../../../core/findings/nextTests/testList.ts';
import { cutWindow } from '../../../../core/measures/windowData.ts';
import { banksToJudge } from '../../../../core/windows/banksToJudge.ts';
import { HOSTILE_CAPTURES } from '../../../support/hostileCaptures.ts';

describe.each(CONDITIONS.map((condition) => [condition.id, condition] as const))('%s', (id, condition) => {
  test.each(HOSTILE_CAPTURES)('%s: met, not met or not recorded, with a sentence', (_name, capture) => {
    const window = { startS: 0, endS: 60, bank: null, kind: 'hold', origin: 'byHand' } as const;
    const data = cutWindow(capture, window, banksToJudge(capture)[0] ?? null);
    for (const troubleCodes of [[], ['P0420'], ['P0300', 'P0133', 'P0141', 'P0171', 'P0040', 'B1234']]) {
      const result = condition.judge({ ...data, measures: new Map(), troubleCodes });
      expect(result.id).toBe(id);
      expect([true, false, null]).toContain(result.met);
      expect(result.detail).toMatch(/[.%]$/);
      expect(result.detail).not.toMatch(/NaN|undefined|null|Infinity|not known/);
    }
  });

  test('explains itself, and its blocker names a test that removes it', () => {
    expect(condition.words).toMatch(/^[A-Z]/);
    expect(condition.help).toMatch(/\.$/);
    if (condition.blocker) expect(testRule(blockerRule(condition.blocker).removedBy).words).toMatch(/\.$/);
  });
});
