// The thresholds are those of the calibration, whose file says how they came about: 97.5 % and 2 %.

import { describe, expect, it } from 'vitest';
import { sureBriefly, sureSentence, weightsSentence } from '../../../../../core/evidence/words/sure.ts';

const plain = (text: string | null) => text?.replaceAll('\u00a0', ' ');

describe('how sure a finding is', () => {
  it('is said of what is found', () => {
    expect(plain(sureSentence('storing', 0.02, '.'))).toBe('98 % sure that it stores oxygen.');
    expect(plain(sureSentence('notStoring', 0.981, '.'))).toBe('98 % sure that it does not store oxygen.');
    expect(plain(sureBriefly('storing', 0.02, '.'))).toBe('98 % sure');
    expect(plain(sureBriefly('notStoring', 0.981, '.'))).toBe('98 % sure');
  });

  it('is no contradiction beside “stores weakly”: it says what the number is of, and from where on more is said', () => {
    const words = plain(sureSentence('weak', 0.97, '.'));
    expect(words).toContain('The probability that it does not store oxygen is 97 %.');
    expect(words).toContain('From 97.5 % on it is said not to store, up to 2 % to store');
    expect(plain(sureSentence('weak', 0.97, ','))).toContain('From 97,5 % on');
    expect(plain(sureBriefly('weak', 0.5, '.'))).toBe('50 % that it does not store, which is said from 97.5 % on');
  });

  it('comes from the weights, and from what the model fit leaves open', () => {
    const words = plain(weightsSentence(','));
    expect(words).toContain('0,7 doubles them');
    expect(words).toContain('above 0,8 g, where converters pass, or below 0,05 g, where they fail');
  });

  it('is not given while it cannot be told, whatever the number', () => {
    for (const probability of [null, 0.97]) {
      expect(sureSentence('cannotTell', probability, '.')).toMatch(/not given while something stands in the way/);
      expect(sureBriefly('cannotTell', probability, '.')).toBeNull();
    }
  });
});
