import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cleanFileName } from '../../../../main/exports/cleanFileName.ts';

/** Names that Windows keeps for itself, with or without an ending (Microsoft, "Naming Files, Paths, and Namespaces"). */
const RESERVED = /^(con|prn|aux|nul|com[0-9]|lpt[0-9])(\.|$)/i;

const nasty = fc.constantFrom(
  '/',
  '\\',
  '..',
  '\u0000',
  '\u202e',
  ':',
  'CON',
  'nul.txt',
  ' ',
  '.',
  '-',
  '~',
  '\n',
  'ü',
  'é',
  '🔧',
  '?',
  '.html',
);
const names = fc.oneof(
  fc.string({ unit: 'grapheme' }),
  fc.string({ unit: 'binary' }),
  fc.array(nasty).map((parts) => parts.join('')),
);

describe('T-OPEN-5: names that people type never become paths', () => {
  it('whatever goes in: one name, valid on three systems, and clean names stay as they are', () => {
    fc.assert(
      fc.property(names, (words) => {
        const name = cleanFileName(words);
        expect(name).not.toMatch(/[/\\:*?"<>|\p{Cc}\p{Cf}\p{Cs}]/u);
        expect(name).not.toMatch(/^[\s.-]|[\s.]$/u);
        expect(name).not.toMatch(RESERVED);
        expect(Buffer.byteLength(name)).toBeGreaterThan(0);
        expect(Buffer.byteLength(name)).toBeLessThanOrEqual(120);
        expect(cleanFileName(name)).toBe(name);
      }),
      { numRuns: 5000 },
    );
  });

  it.each([
    ['Van 14, evidence.html', 'Van 14, evidence.html'],
    ['../../etc/passwd', 'etc passwd'],
    ['van: before/after?.csv', 'van before after .csv'],
    ['CON.html', '_CON.html'],
    ['', 'Tailtrace'],
    ['...', 'Tailtrace'],
    [`${'ö'.repeat(100)}.html`, `${'ö'.repeat(57)}.html`],
  ])('%j becomes %j', (words, name) => {
    expect(cleanFileName(words)).toBe(name);
  });
});
