import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fileName } from '../../../../renderer/actions/exportSheet.ts';

describe('the name of a file', () => {
  it.each([
    ['Van 3 / left: bank 2?', 'html', 'Van 3 left bank 2.html'],
    ['***', 'csv', 'Tailtrace.csv'],
  ])('%j as %s', (title, ending, name) => {
    expect(fileName(title, ending)).toBe(name);
  });

  it('fits into the 255 bytes that a usual file system takes, in every script, and cuts no character in two', () => {
    const title = fc.string({ unit: 'binary', minLength: 200, maxLength: 400 });
    fc.assert(
      fc.property(title, fc.constantFrom('html', 'tailtrace-bundle'), (text, ending) => {
        const name = fileName(text, ending);
        expect(new TextEncoder().encode(name).length).toBeLessThanOrEqual(255);
        expect(name).not.toMatch(/\p{Cs}/u);
      }),
    );
    expect(fileName('車'.repeat(300), 'tailtrace-bundle')).toBe(`${'車'.repeat(74)}.tailtrace-bundle`);
  });
});
